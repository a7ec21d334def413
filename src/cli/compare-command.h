/* rowcut-cli compare JOB.xml M1 M2 */
#pragma once

int rc_compare_command_run (int argc, char **argv);
