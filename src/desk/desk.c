#include "desk.h"

int
rc_desk_main (int argc, char **argv)
{
  return 2;
}
