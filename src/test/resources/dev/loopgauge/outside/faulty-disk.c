/*
 * A disk that fails or is slow, for one process: preloaded, it stands before fsync and fdatasync.
 * FAULTY_DISK_FAILS=N makes one call in N fail by chance; FAULTY_DISK_SLOW_MS=N makes each take N ms.
 */
#include <errno.h>
#include <stdlib.h>
#include <time.h>
#include <unistd.h>
#include <sys/syscall.h>

static long number(const char *name) {
  const char *value = getenv(name);
  return value ? atol(value) : 0;
}

static unsigned int chance(void) {
  struct timespec now;
  clock_gettime(CLOCK_MONOTONIC, &now);
  unsigned int x = (unsigned int) now.tv_nsec ^ ((unsigned int) getpid() * 2654435761u);
  x ^= x >> 16;
  x *= 2246822519u;
  return x ^ (x >> 13);
}

static int synced(int call, int file) {
  long fails = number("FAULTY_DISK_FAILS");
  long slow = number("FAULTY_DISK_SLOW_MS");
  if (slow > 0) {
    struct timespec pause = {slow / 1000, slow % 1000 * 1000000};
    nanosleep(&pause, NULL);
  }
  if (fails > 0 && chance() % (unsigned int) fails == 0) {
    errno = EIO;
    return -1;
  }
  return (int) syscall(call, file);
}

int fsync(int file) {
  return synced(SYS_fsync, file);
}

int fdatasync(int file) {
  return synced(SYS_fdatasync, file);
}
