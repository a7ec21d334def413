/* For the thread sanitizer, which does not see GLib's own locks: tells it of each. Put before every file by the build
 * that looks for races (DEVELOPERS.md). */
#pragma once

#include <glib.h>
#include <sanitizer/tsan_interface.h>

#define g_mutex_lock(mutex)   (g_mutex_lock (mutex), __tsan_acquire (mutex))
#define g_mutex_unlock(mutex) (__tsan_release (mutex), g_mutex_unlock (mutex))
