/* rowcut-cli plan JOB.xml */
#pragma once

int rc_plan_command_run (int argc, char **argv);
