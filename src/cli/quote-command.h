/* rowcut-cli quote JOB.xml */
#pragma once

int rc_quote_command_run (int argc, char **argv);
