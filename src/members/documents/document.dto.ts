import { Shown } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { KIND_PATHS } from './document-kinds.js';
import type { DocumentType } from './document.entity.js';

export const DOCUMENT_TYPES: DocumentType[] = ['image/jpeg', 'image/png', 'image/webp', 'application/pdf'];

/** A scan of a paper, without the scan itself. */
export class DocumentView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', enum: KIND_PATHS, description: 'Which list the paper is in' })
  kind: string;

  @Shown({ type: 'string', format: 'uuid' })
  paperId: string;

  @Shown({ type: 'string', enum: DOCUMENT_TYPES, description: 'As its content says' })
  mediaType: DocumentType;

  @Shown({ type: 'integer', description: 'Bytes as kept: without place and other notes of the camera' })
  sizeBytes: number;

  @Shown({ type: 'string', description: 'SHA-256 of the document as kept, hexadecimal' })
  sha256: string;

  @Shown({ type: 'string', format: 'uuid', description: 'Member' })
  addedBy: string;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;

  @Shown({ type: 'integer', description: 'Always 1: a document is added or deleted, never changed' })
  rowVersion: number;
}

/** One page of documents. */
export class DocumentPage extends PageShape {
  @Shown({ type: () => DocumentView, isArray: true })
  items: DocumentView[];
}

/** A paper that nobody has verified. */
export class UnverifiedView {
  @Shown({ type: 'string', enum: KIND_PATHS })
  kind: string;

  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;

  @Shown({ type: 'string' })
  memberName: string;

  @Shown({ type: 'integer', description: 'How many documents are with it' })
  documents: number;
}

/** One page of papers that nobody has verified. */
export class UnverifiedPage extends PageShape {
  @Shown({ type: () => UnverifiedView, isArray: true })
  items: UnverifiedView[];
}
