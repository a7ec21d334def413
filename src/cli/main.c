#include "cli.h"

int
main (int argc, char **argv)
{
  return rc_cli_main (argc, argv);
}
