/* rowcut-cli quantities JOB.xml */
#pragma once

int rc_quantities_command_run (int argc, char **argv);
