#include "desk.h"

int
main (int argc, char **argv)
{
  return rc_desk_main (argc, argv);
}
