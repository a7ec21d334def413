/* rowcut-cli sheets JOB.xml --to FOLDER */
#pragma once

int rc_sheets_command_run (int argc, char **argv);
