/* Choosing the file of a plan picture. */
#pragma once

#include "floor-view.h"

/* The file chosen becomes the picture of the storey that `floor` shows. */
void rc_picture_dialog_open (RcFloorView *floor);
