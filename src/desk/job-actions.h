/* The window's actions that are about whole jobs: begun, opened, found, duplicated, deleted, in and out as files. Their
 * names and keys stand in window-actions. */
#pragma once

#include <gtk/gtk.h>

void rc_job_action_new (GtkWidget *widget, const char *name, GVariant *parameter);
void rc_job_action_duplicate (GtkWidget *widget, const char *name, GVariant *parameter);
void rc_job_action_open_demo (GtkWidget *widget, const char *name, GVariant *parameter);
void rc_job_action_show_list (GtkWidget *widget, const char *name, GVariant *parameter);
void rc_job_action_find (GtkWidget *widget, const char *name, GVariant *parameter);
void rc_job_action_delete (GtkWidget *widget, const char *name, GVariant *parameter);
void rc_job_action_open_file (GtkWidget *widget, const char *name, GVariant *parameter);
void rc_job_action_show_shop (GtkWidget *widget, const char *name, GVariant *parameter);
void rc_job_action_export_accounts (GtkWidget *widget, const char *name, GVariant *parameter);
void rc_job_action_export_file (GtkWidget *widget, const char *name, GVariant *parameter);
