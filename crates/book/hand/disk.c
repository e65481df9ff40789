/* A disk that lies, fills up or is locked, laid over the real one with LD_PRELOAD.
 *
 * BOOK_DISK=unsynced  a sync of a write-ahead file fails with EIO
 * BOOK_DISK=full      a write to a write-ahead file fails with ENOSPC
 * BOOK_DISK=locked    opening a book, or a file beside it, for writing fails with EROFS
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <unistd.h>

static int is(const char *mode) {
  const char *set = getenv("BOOK_DISK");
  return set && strcmp(set, mode) == 0;
}

static int ends_in(const char *path, const char *ending) {
  size_t length = strlen(path), tail = strlen(ending);
  return length >= tail && strcmp(path + length - tail, ending) == 0;
}

static int is_wal(int file) {
  char link[64], path[4096];
  snprintf(link, sizeof link, "/proc/self/fd/%d", file);
  ssize_t length = readlink(link, path, sizeof path - 1);
  if (length < 0) return 0;
  path[length] = 0;
  return ends_in(path, "-wal");
}

static int refuses_sync(int file) {
  if (is("unsynced") && is_wal(file)) { errno = EIO; return 1; }
  return 0;
}

static int refuses_write(int file) {
  if (is("full") && is_wal(file)) { errno = ENOSPC; return 1; }
  return 0;
}

static int refuses_open(const char *path, int flags) {
  if (is("locked") && strstr(path, ".book") && (flags & (O_WRONLY | O_RDWR | O_CREAT))) { errno = EROFS; return 1; }
  return 0;
}

#define REAL(name) ((__typeof__(&name))dlsym(RTLD_NEXT, #name))

int fsync(int file) { return refuses_sync(file) ? -1 : REAL(fsync)(file); }
int fdatasync(int file) { return refuses_sync(file) ? -1 : REAL(fdatasync)(file); }

ssize_t write(int file, const void *bytes, size_t length) {
  return refuses_write(file) ? -1 : REAL(write)(file, bytes, length);
}
ssize_t pwrite(int file, const void *bytes, size_t length, off_t at) {
  return refuses_write(file) ? -1 : REAL(pwrite)(file, bytes, length, at);
}
ssize_t pwrite64(int file, const void *bytes, size_t length, off64_t at) {
  return refuses_write(file) ? -1 : REAL(pwrite64)(file, bytes, length, at);
}

#define OPEN(name)                                                        \
  int name(const char *path, int flags, ...) {                            \
    va_list rest;                                                         \
    va_start(rest, flags);                                                \
    mode_t mode = flags & O_CREAT ? va_arg(rest, mode_t) : 0;             \
    va_end(rest);                                                         \
    return refuses_open(path, flags) ? -1 : REAL(name)(path, flags, mode); \
  }
OPEN(open)
OPEN(open64)
