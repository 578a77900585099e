/**
 * The screen over HTTP: one page, its events and its orders, and the guards before them. Alone
 * knows the server (Javalin, which runs on Jetty) and the QR code.
 */
package dev.loopgauge.screen.web;
