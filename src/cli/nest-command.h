/* `rowcut-cli nest`: a list of cuts onto rolls. */
#pragma once

/* argv[0] is "nest". Returns the exit status. */
int rc_nest_command_run (int argc, char **argv);
