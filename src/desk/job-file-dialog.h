/* Choosing a job file to read or to write.
 */
#pragma once

#include "window.h"

void rc_job_file_dialog_open (RcWindow *window);
void rc_job_file_dialog_save (RcWindow *window);
