/* The prices of the placement rules, in the job's currency: a row for each. */
#pragma once

#include "panel.h"

#define RC_TYPE_RULE_TABLE (rc_rule_table_get_type ())
G_DECLARE_FINAL_TYPE (RcRuleTable, rc_rule_table, RC, RULE_TABLE, RcPanel)
