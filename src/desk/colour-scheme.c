#include "colour-scheme.h"

#define PORTAL_NAME      "org.freedesktop.portal.Desktop"
#define PORTAL_PATH      "/org/freedesktop/portal/desktop"
#define PORTAL_INTERFACE "org.freedesktop.portal.Settings"
#define NAMESPACE        "org.freedesktop.appearance"
#define KEY              "color-scheme"
#define PREFERS_DARK     1

struct _RcColourScheme
{
  GObject       parent_instance;
  GCancellable *cancellable;
  GDBusProxy   *portal;
};

G_DEFINE_FINAL_TYPE (RcColourScheme, rc_colour_scheme, G_TYPE_OBJECT)

static void
apply (GVariant *value)
{
  g_autoptr (GVariant) inner = g_variant_ref (value);

  while (g_variant_is_of_type (inner, G_VARIANT_TYPE_VARIANT))
    {
      GVariant *next = g_variant_get_variant (inner);
      g_variant_unref (inner);
      inner = next;
    }
  if (g_variant_is_of_type (inner, G_VARIANT_TYPE_UINT32))
    g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme",
                  g_variant_get_uint32 (inner) == PREFERS_DARK, NULL);
}

static void
on_signal (GDBusProxy *portal, const char *sender, const char *signal, GVariant *parameters, gpointer data)
{
  const char *name = NULL, *key = NULL;
  g_autoptr (GVariant) value = NULL;

  if (!g_str_equal (signal, "SettingChanged") || !g_variant_is_of_type (parameters, G_VARIANT_TYPE ("(ssv)")))
    return;
  g_variant_get (parameters, "(&s&sv)", &name, &key, &value);
  if (g_str_equal (name, NAMESPACE) && g_str_equal (key, KEY))
    apply (value);
}

static void
on_read (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GVariant) answer = g_dbus_proxy_call_finish (G_DBUS_PROXY (source), result, NULL);

  if (answer && g_variant_n_children (answer) == 1)
    {
      g_autoptr (GVariant) value = g_variant_get_child_value (answer, 0);
      apply (value);
    }
}

static void
on_portal (GObject *source, GAsyncResult *result, gpointer data)
{
  GDBusProxy *portal = g_dbus_proxy_new_for_bus_finish (result, NULL);

  if (portal == NULL)
    return; /* no portal, or no longer wanted: the desktop's own style it is */
  RcColourScheme *self = data;
  self->portal = portal;
  g_signal_connect_object (portal, "g-signal", G_CALLBACK (on_signal), self, 0);
  g_dbus_proxy_call (portal, "Read", g_variant_new ("(ss)", NAMESPACE, KEY), G_DBUS_CALL_FLAGS_NONE, -1,
                     self->cancellable, on_read, NULL);
}

static void
rc_colour_scheme_dispose (GObject *object)
{
  RcColourScheme *self = RC_COLOUR_SCHEME (object);

  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->portal);
  G_OBJECT_CLASS (rc_colour_scheme_parent_class)->dispose (object);
}

static void
rc_colour_scheme_class_init (RcColourSchemeClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rc_colour_scheme_dispose;
}

static void
rc_colour_scheme_init (RcColourScheme *self)
{
  self->cancellable = g_cancellable_new ();
}

RcColourScheme *
rc_colour_scheme_new (void)
{
  RcColourScheme *self = g_object_new (RC_TYPE_COLOUR_SCHEME, NULL);

  g_dbus_proxy_new_for_bus (G_BUS_TYPE_SESSION, G_DBUS_PROXY_FLAGS_DO_NOT_LOAD_PROPERTIES, NULL, PORTAL_NAME,
                            PORTAL_PATH, PORTAL_INTERFACE, self->cancellable, on_portal, self);
  return self;
}
