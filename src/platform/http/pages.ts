import { ApiProperty, ApiPropertyOptional } from '@nestjs/swagger';
import { Transform } from 'class-transformer';
import { IsInt, IsOptional, IsString, isUUID, Max, MaxLength, Min } from 'class-validator';
import { ProblemException } from '../problems/problem-exception.js';

/** Items a page holds unless asked otherwise. */
export const DEFAULT_PAGE_LIMIT = 50;
/** Most items a page can hold. */
export const MAX_PAGE_LIMIT = 200;

const LIMIT_MESSAGE = { message: `limit must be a whole number from 1 to ${MAX_PAGE_LIMIT}` };

/** Query of every list: how many, and after which. Extend it for filters. */
export class PageQuery {
  @ApiPropertyOptional({
    type: 'integer',
    minimum: 1,
    maximum: MAX_PAGE_LIMIT,
    default: DEFAULT_PAGE_LIMIT,
    description: 'Most items to return',
  })
  @IsOptional()
  @Transform(({ value }) => (typeof value === 'string' && /^\d{1,6}$/.test(value) ? Number(value) : value))
  @IsInt(LIMIT_MESSAGE)
  @Min(1, LIMIT_MESSAGE)
  @Max(MAX_PAGE_LIMIT, LIMIT_MESSAGE)
  limit: number = DEFAULT_PAGE_LIMIT;

  @ApiPropertyOptional({ description: 'nextCursor of the page before; leave it out for the first page' })
  @IsOptional()
  @IsString()
  @MaxLength(400)
  cursor?: string;
}

/** One page of a list. */
export interface Page<T> {
  items: T[];
  /** Send it as `cursor` for the next page; null on the last one. */
  nextCursor: string | null;
}

/** Where a page begins: after the item with this id, and, in lists sorted by something else first, after this key. */
export interface PagePosition {
  id: string;
  key?: string;
}

/** A position as text that clients send back unread. */
export function encodeCursor(position: PagePosition): string {
  return Buffer.from(
    JSON.stringify(position.key === undefined ? [position.id] : [position.id, position.key]),
  ).toString('base64url');
}

/**
 * The position a query starts after; null for the first page.
 * @throws ProblemException 400 when the cursor is not one of ours.
 */
export function decodeCursor(cursor: string | undefined): PagePosition | null {
  if (cursor === undefined || cursor === '') return null;
  try {
    const [id, key, ...rest] = JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8')) as unknown[];
    if (rest.length === 0 && isUUID(id) && (key === undefined || typeof key === 'string')) {
      return key === undefined ? { id: id as string } : { id: id as string, key };
    }
  } catch {
    // Falls through to the refusal.
  }
  throw new ProblemException('cursor-malformed', { field: 'cursor' });
}

/** The id a list sorted by id alone starts after; null for the first page. @throws as `decodeCursor`. */
export const readCursor = (cursor: string | undefined): string | null => decodeCursor(cursor)?.id ?? null;

/**
 * Makes a page out of items read with one more than the limit: the item too many only tells that there is a next page.
 * @param keyOf the sort key, for lists sorted by something before the id.
 */
export function pageOf<T extends { id: string }>(
  items: T[],
  limit: number,
  keyOf?: (item: T) => string,
): Page<T> {
  const shown = items.slice(0, limit);
  const last = items.length > limit ? shown.at(-1) : undefined;
  return { items: shown, nextCursor: last ? encodeCursor({ id: last.id, key: keyOf?.(last) }) : null };
}

/** For the API description: extend it with `items` of the right type. */
export class PageShape {
  @ApiProperty({
    type: 'string',
    nullable: true,
    description: 'Send it as cursor for the next page; null on the last one',
  })
  nextCursor: string | null;
}
