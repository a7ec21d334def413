/* rowcut-cli store check|backup|import|export|jobs */
#pragma once

int rc_store_command_run (int argc, char **argv);
