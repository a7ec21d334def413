#include "floor-keys.h"

#include "floor-view.h"

#define PAN_STEP_PX 60
#define ZOOM_STEP   1.25

static gboolean
key_pan (GtkWidget *widget, GVariant *args, gpointer data)
{
  int dx = 0, dy = 0;

  g_variant_get (args, "(ii)", &dx, &dy);
  rc_floor_view_pan (RC_FLOOR_VIEW (widget), dx * PAN_STEP_PX, dy * PAN_STEP_PX);
  return TRUE;
}

static gboolean
key_zoom (GtkWidget *widget, GVariant *args, gpointer data)
{
  rc_floor_view_zoom (RC_FLOOR_VIEW (widget), g_variant_get_int32 (args) > 0 ? ZOOM_STEP : 1 / ZOOM_STEP);
  return TRUE;
}

static gboolean
key_fit (GtkWidget *widget, GVariant *args, gpointer data)
{
  rc_floor_view_fit (RC_FLOOR_VIEW (widget));
  return TRUE;
}

static gboolean
key_floor (GtkWidget *widget, GVariant *args, gpointer data)
{
  gtk_widget_activate_action (widget, "bench.storey-step", "i", g_variant_get_int32 (args));
  return TRUE;
}

static gboolean
key_piece (GtkWidget *widget, GVariant *args, gpointer data)
{
  gtk_widget_activate_action (widget, "win.step-piece", "i", g_variant_get_int32 (args));
  return TRUE;
}

static gboolean
key_edit (GtkWidget *widget, GVariant *args, gpointer data)
{
  gtk_widget_activate_action (widget, "bench.edit-chosen", NULL);
  return TRUE;
}

static void
add_tool_keys (GtkWidgetClass *klass)
{
  static const struct
  {
    guint       keyval;
    const char *tool;
  } TOOLS[]
      = { { GDK_KEY_r, "room" },       { GDK_KEY_o, "outline" },  { GDK_KEY_d, "door" },  { GDK_KEY_a, "archway" },
          { GDK_KEY_w, "window" },     { GDK_KEY_c, "cut-out" },  { GDK_KEY_f, "stair" }, { GDK_KEY_s, "split" },
          { GDK_KEY_u, "merge" },      { GDK_KEY_j, "join" },     { GDK_KEY_v, "move" },  { GDK_KEY_y, "pile" },
          { GDK_KEY_l, "seam" },       { GDK_KEY_z, "no-seams" }, { GDK_KEY_k, "scale" }, { GDK_KEY_g, "slide" },
          { GDK_KEY_Escape, "choose" } };

  for (guint i = 0; i < G_N_ELEMENTS (TOOLS); i++)
    gtk_widget_class_add_binding_action (klass, TOOLS[i].keyval, 0, "bench.tool", "s", TOOLS[i].tool);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_C, GDK_SHIFT_MASK, "bench.tool", "s", "closet");
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Q, GDK_SHIFT_MASK, "bench.tool", "s", "swivel");
  gtk_widget_class_add_binding_action (klass, GDK_KEY_h, 0, "bench.legend", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_m, 0, "bench.mirror-room", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_b, 0, "bench.picture-open", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_i, 0, "bench.picture", "s", "lighten");
  gtk_widget_class_add_binding_action (klass, GDK_KEY_q, 0, "bench.picture", "s", "turn");
  gtk_widget_class_add_binding_action (klass, GDK_KEY_e, 0, "bench.picture", "s", "page");
  gtk_widget_class_add_binding_action (klass, GDK_KEY_x, 0, "bench.picture", "s", "remove");
  gtk_widget_class_add_binding_action (klass, GDK_KEY_t, 0, "bench.turn-room", "i", 90);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_T, GDK_SHIFT_MASK, "bench.turn-room", "i", -90);
}

void
rc_floor_keys_add (GtkWidgetClass *klass)
{
  static const struct
  {
    guint keyval, keypad;
    int   dx, dy;
  } PANS[] = { { GDK_KEY_Left, GDK_KEY_KP_Left, 1, 0 },
               { GDK_KEY_Right, GDK_KEY_KP_Right, -1, 0 },
               { GDK_KEY_Up, GDK_KEY_KP_Up, 0, 1 },
               { GDK_KEY_Down, GDK_KEY_KP_Down, 0, -1 } };
  static const guint FITS[] = { GDK_KEY_0, GDK_KEY_KP_0, GDK_KEY_Home, GDK_KEY_KP_Home };
  static const guint INS[] = { GDK_KEY_plus, GDK_KEY_equal, GDK_KEY_KP_Add };
  static const guint OUTS[] = { GDK_KEY_minus, GDK_KEY_KP_Subtract };

  for (guint i = 0; i < G_N_ELEMENTS (PANS); i++)
    {
      gtk_widget_class_add_binding (klass, PANS[i].keyval, 0, key_pan, "(ii)", PANS[i].dx, PANS[i].dy);
      gtk_widget_class_add_binding (klass, PANS[i].keypad, 0, key_pan, "(ii)", PANS[i].dx, PANS[i].dy);
    }
  for (guint i = 0; i < G_N_ELEMENTS (FITS); i++)
    gtk_widget_class_add_binding (klass, FITS[i], 0, key_fit, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (INS); i++)
    {
      gtk_widget_class_add_binding (klass, INS[i], 0, key_zoom, "i", 1);
      gtk_widget_class_add_binding (klass, INS[i], GDK_SHIFT_MASK, key_zoom, "i", 1);
    }
  for (guint i = 0; i < G_N_ELEMENTS (OUTS); i++)
    gtk_widget_class_add_binding (klass, OUTS[i], 0, key_zoom, "i", -1);
  gtk_widget_class_add_binding (klass, GDK_KEY_Page_Up, 0, key_floor, "i", 1);
  gtk_widget_class_add_binding (klass, GDK_KEY_Page_Down, 0, key_floor, "i", -1);
  gtk_widget_class_add_binding (klass, GDK_KEY_n, 0, key_piece, "i", 1);
  gtk_widget_class_add_binding (klass, GDK_KEY_period, 0, key_piece, "i", 1);
  gtk_widget_class_add_binding (klass, GDK_KEY_p, 0, key_piece, "i", -1);
  gtk_widget_class_add_binding (klass, GDK_KEY_comma, 0, key_piece, "i", -1);
  gtk_widget_class_add_binding (klass, GDK_KEY_Return, 0, key_edit, NULL);
  gtk_widget_class_add_binding (klass, GDK_KEY_KP_Enter, 0, key_edit, NULL);
  add_tool_keys (klass);
}
