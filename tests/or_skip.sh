#!/bin/sh
# Runs a test that needs a program or packages that not every machine has:
#
#     or_skip.sh COMMAND WORD...
#
# A command that is not there, or one that ends with 77 since something else is missing, counts as
# skipped. Where SUDSMARK_SKIP_NOTHING is set, as .ci/run does, it counts as failed.
if command -v "$1" >/dev/null 2>&1; then
  "$@"
  status=$?
else
  echo "skipped: $1 is not installed"
  status=77
fi
if [ "$status" -eq 77 ] && [ -n "${SUDSMARK_SKIP_NOTHING:-}" ]; then
  echo "failed, since nothing may be skipped here"
  status=1
fi
exit "$status"
