#!/bin/sh
# Hands the passwords to roles.sql as psql variables, so that no quoting can go wrong.
set -eu
psql --username "$POSTGRES_USER" --dbname postgres --set ON_ERROR_STOP=1 \
  --set owner_password="$BELLCRANK_OWNER_PASSWORD" --set service_password="$BELLCRANK_SERVICE_PASSWORD" \
  --file /bellcrank/roles.sql
