#include "cli.h"

int
rc_cli_main (int argc, char **argv)
{
  return 2;
}
