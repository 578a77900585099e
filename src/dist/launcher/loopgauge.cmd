@echo off
rem Starts Loopgauge on Windows with the Java of the system.
setlocal
set "java=java"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java"
rem A short command ends before a second collector thread or a better compiler pays.
set "flags=-XX:+UseSerialGC -XX:TieredStopAtLevel=1"
for %%c in (plan patch calibrate measure round host soak watch screen follow pairs series journal report demo) do if "%~1"=="%%c" set "flags="
"%java%" %flags% -cp "%~dp0..\lib\*" dev.loopgauge.cli.Main %*
exit /b %errorlevel%
