/** What people are told when the database refuses an import of a log. Imported for its effect by the module. */
import { registerChecks, registerReferences } from '../../platform/database/constraint-words.js';

registerChecks([
  ['log_imports_file_chk', undefined, 'A file is known by its SHA-256.'],
  ['log_imports_headings_chk', undefined, 'The headings of a file are known by their SHA-256.'],
  ['log_imports_choices_chk', 'choices', 'Say how the file is read.'],
  ['log_imports_rows_chk', 'file', 'A file has 1 to 20,000 rows.'],
  ['log_imports_entries_chk', 'file', 'An import writes at least one entry.'],
  ['log_imports_unreadable_chk', undefined, 'Rows left out are counted from 0.'],
  ['log_imports_repeated_chk', undefined, 'Rows left out are counted from 0.'],
  ['log_imports_counts_chk', undefined, 'No more rows are written or left out than the file has.'],
  ['log_imports_span_chk', undefined, 'The first day is not after the last.'],
  ['log_imports_back_chk', undefined, 'An import is taken back by somebody, at a time.'],
  ['log_imports_append_only', undefined, 'An import is taken back once and not changed otherwise.'],
  ['log_entries_times_chk', 'departedAt', 'Only a flight from a file may be without its times.'],
]);
registerReferences([
  [
    'log_imports_member_fk',
    undefined,
    'An import is into the log of a member of the club, who is not deleted.',
  ],
  ['log_imports_by_fk', undefined, 'An import is made by a member of the club, who is not deleted.'],
  ['log_imports_back_fk', undefined, 'An import is taken back by a member of the club, who is not deleted.'],
  ['log_imports_owner_uq', undefined, 'An import stays with its member.'],
  ['log_entries_import_fk', undefined, 'An entry came with an import into the same log, or with none.'],
]);
