#include "office-hand.h"

/* Cut 11' 11" wide with its trim. */
const char OFFICE_HAND_PARLOUR[]
    = "<job xmlns=\"urn:rowcut:job:1\" id=\"J-7\" title=\"Parlour\">\n"
      "  <customer name=\"Tamsin Oddlebury\"/>\n"
      "  <goods><carpet id=\"fennel-twist-oat\" name=\"Fennel Twist, oat\" supplier=\"Skerrow Mills\" unit=\"sq yd\""
      " roll-width=\"12 ft\" length-step=\"1 ft\" full-roll=\"120 ft\"/></goods>\n"
      "  <measure id=\"M1\"><room id=\"parlour\" name=\"Parlour\">"
      "<wall bearing=\"E\" length=\"11 ft 8 in\"/><wall bearing=\"N\" length=\"14 ft\"/>"
      "<wall bearing=\"W\" length=\"11 ft 8 in\"/><wall bearing=\"S\" length=\"14 ft\"/></room>"
      "<area id=\"a\" rooms=\"parlour\" carpet=\"fennel-twist-oat\"/></measure>\n</job>\n";

void
office_hand_set_up (DeskFixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  desk_fixture_open (fixture, FALSE);
  g_autofree char *path = g_build_filename (fixture->folder, "parlour.xml", NULL);
  g_assert_true (g_file_set_contents (path, OFFICE_HAND_PARLOUR, -1, &error));
  rc_window_import (fixture->window, path, &error);
  g_assert_no_error (error);
  rc_document_set_improve_seconds (rc_window_get_document (fixture->window), 0);
  desk_fixture_settle ();
}

void
office_hand_tear_down (DeskFixture *fixture, gconstpointer data)
{
  desk_fixture_close (fixture);
}

gpointer
office_hand_open_window (DeskFixture *fixture, const char *action, GType type)
{
  GListModel *windows = gtk_window_get_toplevels ();

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (fixture->window), action, NULL));
  desk_fixture_settle ();
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);
      if (G_OBJECT_TYPE (window) == type)
        return window;
    }
  g_assert_not_reached ();
}

void
office_hand_act (gpointer window, const char *action)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), action, NULL));
  desk_fixture_settle ();
}

void
office_hand_click (gpointer window, const char *button)
{
  g_signal_emit_by_name (desk_fixture_find (GTK_WIDGET (window), GTK_TYPE_BUTTON, button), "clicked");
  desk_fixture_settle ();
}

RcJobState
office_hand_get_state (DeskFixture *fixture)
{
  return rc_job_get_state (rc_document_get_job (rc_window_get_document (fixture->window)));
}

void
office_hand_widen (DeskFixture *fixture)
{
  rc_document_choose (rc_window_get_document (fixture->window), rc_choice_of_thing (RC_THING_ROOM, "parlour"));
  desk_fixture_settle ();
  for (guint wall = 0; wall < 4; wall += 2)
    {
      rc_wall_table_focus_wall (rc_bench_get_wall_table (rc_window_get_bench (fixture->window)), wall);
      desk_fixture_type (GTK_WINDOW (fixture->window), "12' 3\"");
    }
}
