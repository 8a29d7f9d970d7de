/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/window/sw-application.h"
#include "forecast/sw-memory.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

int
main (int argc, char **argv)
{
  g_autoptr (SwApplication) application = NULL;

  sw_memory_keep ();
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, SW_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  g_set_application_name ("Strandwise");

  application = sw_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
