-- From a store of version 5 to one of version 6. New columns of a job's tables go to the end and have a default, and its
-- rows are stored anew (migrate-4.sql says why); tables, indexes and triggers are those of schema.sql.

ALTER TABLE suppliers ADD COLUMN language TEXT;
ALTER TABLE roll_moves ADD COLUMN cause TEXT; -- what older programs worded for themselves stays in the notes
