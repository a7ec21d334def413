/* The GTK desktop. */
#pragma once

/* Runs the desktop until its last window closes; returns the exit status. */
int rc_desk_main (int argc, char **argv);
