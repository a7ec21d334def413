/* rowcut-cli order JOB.xml */
#pragma once

int rc_order_command_run (int argc, char **argv);
