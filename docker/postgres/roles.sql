-- Runs once, when the volume of the compose file's PostgreSQL is empty. Passwords come from roles.sh.
-- The owner changes tables and is no superuser; the service owns nothing and is bound by row-level security.
CREATE ROLE bellcrank_owner LOGIN NOSUPERUSER NOBYPASSRLS NOCREATEROLE PASSWORD :'owner_password';
CREATE ROLE bellcrank_app NOLOGIN;
CREATE ROLE bellcrank_service LOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE PASSWORD :'service_password';
GRANT bellcrank_app TO bellcrank_service;
CREATE DATABASE bellcrank OWNER bellcrank_owner TEMPLATE template0 ENCODING 'UTF8' LOCALE 'C.UTF-8';
REVOKE CONNECT ON DATABASE bellcrank FROM PUBLIC;
GRANT CONNECT ON DATABASE bellcrank TO bellcrank_app;
