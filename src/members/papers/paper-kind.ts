import type { Type } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import type { Paper } from './paper.entity.js';
import type { PaperHead } from './paper.dto.js';

/** Somebody writing a paper. */
export interface Writing {
  by: SignedIn;
  /** Whose paper it is. */
  memberId: string;
  isNew: boolean;
  /** Verified by the writer, now; for papers that the writer makes out. */
  stamp: Pick<Paper, 'verifiedBy' | 'verifiedAt'>;
}

/**
 * One kind of paper: everything in which it differs from the others. Listing, editing, verifying and deleting are the
 * same for all and live in `PapersService`.
 */
export interface PaperKind<
  Row extends Paper = Paper,
  Draft extends object = object,
  View extends PaperHead = PaperHead,
> {
  /** Below /members/:memberId. */
  path: string;
  /** For operation ids: 'Medical', 'Medicals'. */
  name: { one: string; many: string };
  /** What people call it: 'medical certificate'. */
  noun: string;
  entity: new () => Row;
  draft: Type<Draft>;
  patch: Type<Partial<Draft>>;
  view: Type<View>;
  /** Instructors may give and verify it too. */
  byInstructors?: boolean;
  /** Column values for what the draft holds; what it leaves out stays undefined. @throws 422 */
  values(draft: Partial<Draft>): Partial<Row>;
  /** Further column values that depend on who writes; checks of references. @throws 422 */
  complete?(em: EntityManager, writing: Writing, values: Partial<Row>): Promise<Partial<Row>>;
  /** Writes what is kept in tables beside the paper's own. */
  writeParts?(em: EntityManager, row: Row, draft: Partial<Draft>): Promise<void>;
  views(em: EntityManager, rows: Row[]): Promise<View[]>;
}

/** Lets a kind's types be inferred where it is written down. */
export const paperKind = <Row extends Paper, Draft extends object, View extends PaperHead>(
  kind: PaperKind<Row, Draft, View>,
): PaperKind<Row, Draft, View> => kind;
