/** What a preview and an import answer with. */
import { Shown } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { LogImportChoices } from './log-import.dto.js';

export class LogSumsView {
  @Shown({ type: 'integer' })
  flights: number;
  @Shown({ type: 'number' })
  totalH: number;
  @Shown({ type: 'number' })
  nightH: number;
  @Shown({ type: 'number' })
  crossCountryH: number;
  @Shown({ type: 'number' })
  actualInstrumentH: number;
  @Shown({ type: 'number' })
  simulatedInstrumentH: number;
  @Shown({ type: 'number' })
  dualGivenH: number;
  @Shown({ type: 'integer' })
  takeoffs: number;
  @Shown({ type: 'integer' })
  landings: number;
}

/** Sums over the whole log, time in training devices among them. */
export class LogTotalsChangeView {
  @Shown({ type: () => LogSumsView })
  before: LogSumsView;
  @Shown({ type: () => LogSumsView })
  added: LogSumsView;
  @Shown({ type: () => LogSumsView })
  after: LogSumsView;
}

export class LogColumnView {
  @Shown({ type: 'integer' })
  index: number;
  @Shown({ type: 'string' })
  heading: string;
  @Shown({ type: 'array', items: { type: 'string' }, description: 'The first few of its cells' })
  samples: string[];
  @Shown({ type: 'string', nullable: true, description: 'What it was taken for; null: not taken over' })
  field: string | null;
  @Shown({ type: 'string', nullable: true, description: 'Of hours: how they are written' })
  form: string | null;
  @Shown({ type: 'string', nullable: true })
  note: string | null;
}

export class LogQuestionView {
  @Shown({ type: 'string', enum: ['dates', 'decimal', 'clock', 'columns'] })
  choice: string;
  @Shown({ type: 'integer', nullable: true, description: 'Column it is about' })
  index: number | null;
  @Shown({ type: 'string' })
  says: string;
}

export class LogKindView {
  @Shown({ type: 'string' })
  words: string;
  @Shown({ type: 'integer' })
  rows: number;
  @Shown({ type: 'boolean', description: 'Whether the choices say what it is' })
  told: boolean;
}

export class BadRowView {
  @Shown({ type: 'integer', description: 'Line of the file, from 1' })
  line: number;
  @Shown({ type: 'string' })
  because: string;
}

/** Bad rows of one reason. */
export class BadRowsView {
  @Shown({ type: 'string', nullable: true, description: 'Heading of the column at fault' })
  column: string | null;
  @Shown({ type: 'string' })
  because: string;
  @Shown({ type: 'integer' })
  rows: number;
}

export class RepeatedRowView {
  @Shown({ type: 'integer' })
  line: number;
  @Shown({
    type: 'string',
    enum: ['same', 'alike'],
    description:
      'same: off blocks in the same minute; alike: same day, aircraft and hours, the times of one of them not known',
  })
  kind: string;
  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The entry of the log it repeats' })
  entryId: string | null;
  @Shown({ type: 'integer', nullable: true, description: 'The line of the file it repeats' })
  earlierLine: number | null;
  @Shown({ type: 'string', format: 'date' })
  flownOn: string;
}

export class LogFileCountsView {
  @Shown({ type: 'integer', description: 'Below the headings' })
  rows: number;
  @Shown({ type: 'integer', description: 'That would be written' })
  toWrite: number;
  @Shown({ type: 'integer', description: 'That cannot be read' })
  bad: number;
  @Shown({ type: 'integer', description: 'In the log or the file already, for certain; left out' })
  same: number;
  @Shown({ type: 'integer', description: 'Perhaps; left out unless chosen otherwise' })
  alike: number;
  @Shown({ type: 'integer', description: 'Sums of the sheet, which are no flights' })
  sums: number;
  @Shown({ type: 'integer', description: 'Of those to be written: without times' })
  untimed: number;
  @Shown({ type: 'integer', description: 'Of those to be written: total rounded to a tenth of an hour' })
  rounded: number;
}

/** The last line of a preview. */
export class LogImportPreview {
  @Shown({ type: 'string', nullable: true, description: 'To import with; null: something stands in the way' })
  preview: string | null;
  @Shown({ type: 'string' })
  encoding: string;
  @Shown({ type: 'string', nullable: true, description: 'What parts the cells; null: JSON' })
  delimiter: string | null;
  @Shown({ type: 'integer' })
  headingLine: number;
  @Shown({ type: 'boolean', description: 'The choices are those of the last import with the same headings' })
  remembered: boolean;
  @Shown({ type: () => LogImportChoices, description: 'As used: send it back with what is to be otherwise' })
  choices: LogImportChoices;
  @Shown({ type: () => LogColumnView, isArray: true })
  columns: LogColumnView[];
  @Shown({ type: () => LogQuestionView, isArray: true, description: 'To be answered before rows are read' })
  questions: LogQuestionView[];
  @Shown({
    type: () => LogKindView,
    isArray: true,
    description: 'Aircraft the club does not know; at most 300',
  })
  kinds: LogKindView[];
  @Shown({ type: () => LogFileCountsView })
  counts: LogFileCountsView;
  @Shown({
    type: () => BadRowsView,
    isArray: true,
    description: 'By reason, the most rows first; at most 50',
  })
  badReasons: BadRowsView[];
  @Shown({ type: () => BadRowView, isArray: true, description: 'The first 200' })
  bad: BadRowView[];
  @Shown({ type: () => RepeatedRowView, isArray: true, description: 'The first 200' })
  repeated: RepeatedRowView[];
  @Shown({ type: 'string', format: 'date', nullable: true })
  firstFlownOn: string | null;
  @Shown({ type: 'string', format: 'date', nullable: true })
  lastFlownOn: string | null;
  @Shown({ type: 'number', description: 'Total hours of what would be written, as the file has them' })
  hoursInFile: number;
  @Shown({ type: () => LogTotalsChangeView })
  totals: LogTotalsChangeView;
  @Shown({ type: 'array', items: { type: 'string' }, description: 'To know before it is taken over' })
  notes: string[];
  @Shown({ type: 'string' })
  caution: string;
}

/** A line on the way. */
export class LogImportProgress {
  @Shown({ type: 'integer', description: 'Rows read' })
  row: number;
  @Shown({ type: 'integer', description: 'Rows of the file' })
  of: number;
}

/** The last line where something went wrong on the way. */
export class LogImportError {
  @Shown({
    ...{ type: 'object', additionalProperties: true },
    description: 'A problem document (RFC 9457), as an answer of its own would be',
  })
  error: object;
}

/** A file that was taken over. */
export class LogImportView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;
  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;
  @Shown({ type: 'string', format: 'uuid' })
  importedBy: string;
  @Shown({ type: 'string', description: 'Of the file' })
  fileSha256: string;
  @Shown({ type: 'integer' })
  fileRows: number;
  @Shown({ type: 'integer', description: 'Entries written' })
  entries: number;
  @Shown({ type: 'integer', description: 'Left out because they could not be read' })
  unreadableRows: number;
  @Shown({ type: 'integer', description: 'Left out because the log had them, or may have had' })
  repeatedRows: number;
  @Shown({ type: 'string', format: 'date' })
  firstFlownOn: string;
  @Shown({ type: 'string', format: 'date' })
  lastFlownOn: string;
  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;
  @Shown({ type: 'string', format: 'date-time', nullable: true })
  takenBackAt: string | null;
}

export class LogImportPage extends PageShape {
  @Shown({ type: () => LogImportView, isArray: true })
  items: LogImportView[];
}
