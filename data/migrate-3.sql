-- From a store of version 3 to one of version 4. New columns of a job's tables go to the end and have a default, so that
-- the steps recorded before can still be undone; tables, indexes and triggers are those of schema.sql.

ALTER TABLE customers ADD COLUMN language TEXT;
