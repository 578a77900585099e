/*
 * Stands before ALSA's calls: lists one sound card where there is none, writes down which devices
 * are opened, and opens ALSA's "null" in place of those that are the card itself.
 */
#include <dlfcn.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static char control; /* stands for what controls the card */

int snd_card_next(int *card) {
  *card = *card < 0 ? 0 : -1;
  return 0;
}

int snd_ctl_open(void **ctl, const char *name, int mode) {
  *ctl = &control;
  return 0;
}

int snd_ctl_close(void *ctl) { return 0; }

/* struct snd_ctl_card_info of sound/asound.h: int card, int pad, char id[16] */
int snd_ctl_card_info(void *ctl, void *info) {
  strcpy((char *)info + 8, "Stage");
  return 0;
}

int snd_ctl_pcm_next_device(void *ctl, int *device) {
  *device = *device < 0 ? 0 : -1;
  return 0;
}

int snd_ctl_pcm_info(void *ctl, void *info) { return 0; }

/* The card has no faders. */
int snd_mixer_attach(void *mixer, const char *name) { return -ENODEV; }

static int is_card(const char *name) {
  return strstr(name, "hw:") != NULL || strcmp(name, "alone") == 0;
}

int snd_pcm_open(void **pcm, const char *name, int stream, int mode) {
  typedef int (*open_pcm)(void **, const char *, int, int);
  open_pcm real = (open_pcm)dlsym(dlopen("libasound.so.2", RTLD_LAZY), "snd_pcm_open");
  FILE *log = fopen(getenv("FAKE_CARD_LOG"), "a");
  fprintf(log, "%s\n", name);
  fclose(log);
  return real(pcm, is_card(name) ? "null" : name, stream, mode);
}
