#include "fault-layer.h"

#include <sqlite3.h>
#include <string.h>

typedef struct
{
  sqlite3_file base;
  sqlite3_file real[]; /* the file of the layer below, as large as that says */
} FaultFile;

static struct
{
  sqlite3_vfs        *below;
  sqlite3_mem_methods memory;
  FaultKind           kind;
  gboolean            armed, once;
  guint               number, n_calls, n_failed;
} layer;

const char *
fault_kind_get_name (FaultKind kind)
{
  static const char *const names[FAULT_N_KINDS] = { "read", "write", "full", "locked", "read-only", "memory", "call" };

  return names[kind];
}

void
fault_layer_arm (FaultKind kind, guint number, gboolean once)
{
  layer.kind = kind;
  layer.number = number;
  layer.once = once;
  layer.n_calls = layer.n_failed = 0;
  layer.armed = TRUE;
}

guint
fault_layer_disarm (void)
{
  layer.armed = FALSE;
  return layer.n_failed;
}

guint
fault_layer_get_n_calls (void)
{
  return layer.n_calls;
}

gboolean
fault_layer_is_counting (void)
{
  return layer.armed && layer.number == G_MAXUINT;
}

gboolean
fault_layer_take (FaultKind kind)
{
  guint call;

  if (!layer.armed || layer.kind != kind)
    return FALSE;
  call = layer.n_calls++;
  if (call < layer.number || (layer.once && call > layer.number))
    return FALSE;
  layer.n_failed++;
  return TRUE;
}

/* Writing fails for want of a disk, or of room on it. */
static int
take_write_fault (int code)
{
  if (fault_layer_take (FAULT_WRITE))
    return code;
  return fault_layer_take (FAULT_FULL) ? SQLITE_FULL : SQLITE_OK;
}

static sqlite3_file *
real_of (sqlite3_file *file)
{
  return ((FaultFile *)file)->real;
}

static int
file_close (sqlite3_file *file)
{
  return real_of (file)->pMethods->xClose (real_of (file));
}

static int
file_read (sqlite3_file *file, void *data, int size, sqlite3_int64 offset)
{
  if (fault_layer_take (FAULT_READ))
    return SQLITE_IOERR_READ;
  return real_of (file)->pMethods->xRead (real_of (file), data, size, offset);
}

static int
file_write (sqlite3_file *file, const void *data, int size, sqlite3_int64 offset)
{
  int fault = take_write_fault (SQLITE_IOERR_WRITE);

  /* A write that fails may have been half done. */
  if (fault != SQLITE_OK && size > 1)
    real_of (file)->pMethods->xWrite (real_of (file), data, size / 2, offset);
  return fault != SQLITE_OK ? fault : real_of (file)->pMethods->xWrite (real_of (file), data, size, offset);
}

static int
file_truncate (sqlite3_file *file, sqlite3_int64 size)
{
  int fault = take_write_fault (SQLITE_IOERR_TRUNCATE);

  return fault != SQLITE_OK ? fault : real_of (file)->pMethods->xTruncate (real_of (file), size);
}

static int
file_sync (sqlite3_file *file, int flags)
{
  /* The machine itself does not fail here, so nothing needs to reach the disk. */
  return take_write_fault (SQLITE_IOERR_FSYNC);
}

static int
file_get_size (sqlite3_file *file, sqlite3_int64 *size)
{
  if (fault_layer_take (FAULT_READ))
    return SQLITE_IOERR_FSTAT;
  return real_of (file)->pMethods->xFileSize (real_of (file), size);
}

static int
file_lock (sqlite3_file *file, int level)
{
  if (fault_layer_take (FAULT_LOCKED))
    return SQLITE_BUSY;
  return real_of (file)->pMethods->xLock (real_of (file), level);
}

static int
file_unlock (sqlite3_file *file, int level)
{
  return real_of (file)->pMethods->xUnlock (real_of (file), level);
}

static int
file_check_lock (sqlite3_file *file, int *is_locked)
{
  return real_of (file)->pMethods->xCheckReservedLock (real_of (file), is_locked);
}

static int
file_control (sqlite3_file *file, int operation, void *argument)
{
  return real_of (file)->pMethods->xFileControl (real_of (file), operation, argument);
}

static int
file_get_sector_size (sqlite3_file *file)
{
  return real_of (file)->pMethods->xSectorSize (real_of (file));
}

static int
file_get_device (sqlite3_file *file)
{
  return real_of (file)->pMethods->xDeviceCharacteristics (real_of (file));
}

static int
file_map_shared (sqlite3_file *file, int page, int size, int extend, void volatile **memory)
{
  if (fault_layer_take (FAULT_READ))
    return SQLITE_IOERR_SHMMAP;
  return real_of (file)->pMethods->xShmMap (real_of (file), page, size, extend, memory);
}

static int
file_lock_shared (sqlite3_file *file, int offset, int n, int flags)
{
  if ((flags & SQLITE_SHM_LOCK) && fault_layer_take (FAULT_LOCKED))
    return SQLITE_BUSY;
  return real_of (file)->pMethods->xShmLock (real_of (file), offset, n, flags);
}

static void
file_bar_shared (sqlite3_file *file)
{
  real_of (file)->pMethods->xShmBarrier (real_of (file));
}

static int
file_unmap_shared (sqlite3_file *file, int delete)
{
  return real_of (file)->pMethods->xShmUnmap (real_of (file), delete);
}

static const sqlite3_io_methods methods = {
  .iVersion = 2,
  .xClose = file_close,
  .xRead = file_read,
  .xWrite = file_write,
  .xTruncate = file_truncate,
  .xSync = file_sync,
  .xFileSize = file_get_size,
  .xLock = file_lock,
  .xUnlock = file_unlock,
  .xCheckReservedLock = file_check_lock,
  .xFileControl = file_control,
  .xSectorSize = file_get_sector_size,
  .xDeviceCharacteristics = file_get_device,
  .xShmMap = file_map_shared,
  .xShmLock = file_lock_shared,
  .xShmBarrier = file_bar_shared,
  .xShmUnmap = file_unmap_shared,
};

static int
layer_open (sqlite3_vfs *vfs, const char *path, sqlite3_file *file, int flags, int *out_flags)
{
  int code;

  file->pMethods = NULL;
  if (fault_layer_take (FAULT_READ)
      || (path != NULL && (flags & SQLITE_OPEN_CREATE) && take_write_fault (SQLITE_CANTOPEN)))
    return SQLITE_CANTOPEN;
  if ((flags & SQLITE_OPEN_READWRITE) && fault_layer_take (FAULT_READ_ONLY))
    {
      if (!(flags & SQLITE_OPEN_MAIN_DB))
        return SQLITE_CANTOPEN;
      flags = (flags & ~(SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE)) | SQLITE_OPEN_READONLY;
    }
  code = layer.below->xOpen (layer.below, path, real_of (file), flags, out_flags);
  if (real_of (file)->pMethods != NULL)
    file->pMethods = &methods;
  return code;
}

static int
layer_delete (sqlite3_vfs *vfs, const char *path, int sync_folder)
{
  int fault = take_write_fault (SQLITE_IOERR_DELETE);

  return fault != SQLITE_OK ? fault : layer.below->xDelete (layer.below, path, sync_folder);
}

static int
layer_access (sqlite3_vfs *vfs, const char *path, int flags, int *result)
{
  if (fault_layer_take (FAULT_READ))
    return SQLITE_IOERR_ACCESS;
  return layer.below->xAccess (layer.below, path, flags, result);
}

/* A wait for a lock is counted, not slept. */
static int
layer_sleep (sqlite3_vfs *vfs, int microseconds)
{
  return layer.armed ? microseconds : layer.below->xSleep (layer.below, microseconds);
}

static void *
memory_new (int size)
{
  return fault_layer_take (FAULT_MEMORY) ? NULL : layer.memory.xMalloc (size);
}

static void *
memory_resize (void *block, int size)
{
  return fault_layer_take (FAULT_MEMORY) ? NULL : layer.memory.xRealloc (block, size);
}

void
fault_layer_install (void)
{
  static sqlite3_vfs  vfs;
  sqlite3_mem_methods memory;

  g_assert_cmpint (sqlite3_config (SQLITE_CONFIG_GETMALLOC, &layer.memory), ==, SQLITE_OK);
  memory = layer.memory;
  memory.xMalloc = memory_new;
  memory.xRealloc = memory_resize;
  g_assert_cmpint (sqlite3_config (SQLITE_CONFIG_MALLOC, &memory), ==, SQLITE_OK);
  /* The small blocks that SQLite keeps at hand would hide most of its allocations. */
  g_assert_cmpint (sqlite3_config (SQLITE_CONFIG_LOOKASIDE, 0, 0), ==, SQLITE_OK);

  layer.below = sqlite3_vfs_find (NULL);
  vfs = *layer.below;
  vfs.zName = "fault";
  vfs.szOsFile = (int)sizeof (FaultFile) + layer.below->szOsFile;
  vfs.xOpen = layer_open;
  vfs.xDelete = layer_delete;
  vfs.xAccess = layer_access;
  vfs.xSleep = layer_sleep;
  g_assert_cmpint (sqlite3_vfs_register (&vfs, 1), ==, SQLITE_OK);
}
