/* The command line: the same work as the desktop without a display. */
#pragma once

/* Runs one command; argv[0] is the program's name. Returns the exit status: 0 done, 1 could not be done, 2 wrong usage.
 */
int rc_cli_main (int argc, char **argv);
