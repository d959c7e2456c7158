import { Injectable } from '@nestjs/common';
import { isUUID } from 'class-validator';
import { setTimeout as pause } from 'node:timers/promises';
import { DataSource, type EntityManager } from 'typeorm';
import type { IsolationLevel } from 'typeorm/driver/types/IsolationLevel.js';
import { AppConfig } from '../config.js';
import { ProblemException } from '../problems/problem-exception.js';
import { RETRYABLE_STATES, sqlStateOf } from './constraint-problems.js';

/** How to run a transaction. */
export interface RunOptions {
  /** Refuse writes; lets a reader be sent elsewhere later. */
  readOnly?: boolean;
  /** READ COMMITTED unless said otherwise. */
  isolation?: IsolationLevel;
  /** Run `fn` again after a serialisation failure or a deadlock; true unless said otherwise. `fn` must bear being run twice. */
  retry?: boolean;
  /** Who acts: the user's id, noted by the audit trigger. */
  actorId?: string | null;
  /** Undo everything at the end: what a change would do is found out by doing it. */
  rehearse?: boolean;
  /** Another limit for each statement than the configured one (milliseconds). */
  statementTimeoutMs?: number;
}

/** Settings that hold for one transaction only, so that a pooler in transaction mode cannot carry them to another club. */
type LocalSettings = Record<string, string>;

const MAX_ATTEMPTS = 4;
/** Under which a query runner carries its club. */
const CLUB = 'bellcrank club';

/**
 * The only way to the clubs' tables. Each call is one transaction in which row-level security shows one club's rows
 * and no others.
 */
@Injectable()
export class TenantDb {
  constructor(
    private readonly dataSource: DataSource,
    private readonly config: AppConfig,
  ) {}

  /**
   * Runs `fn` in a transaction of one club and commits it; rolls back when `fn` throws.
   * @throws ProblemException 400 when an id is not a UUID. Errors of the database pass through as they are; the
   *   problem filter translates them.
   */
  async run<T>(clubId: string, fn: (em: EntityManager) => Promise<T>, options: RunOptions = {}): Promise<T> {
    requireUuid('clubId', clubId);
    if (options.actorId) requireUuid('actorId', options.actorId);
    const settings = { 'bellcrank.club_id': clubId, 'bellcrank.actor_id': options.actorId ?? '' };
    return this.transact(settings, fn, options, clubId);
  }

  /**
   * Runs `fn` where no club is known yet: at sign-in, when only the club's short name is at hand, and for sweeps over
   * tables that belong to no club. Row-level security then shows at most the club row with that short name.
   */
  async runWithoutClub<T>(
    clubSlug: string | null,
    fn: (em: EntityManager) => Promise<T>,
    options: RunOptions = {},
  ): Promise<T> {
    return this.transact(
      { 'bellcrank.club_id': '', 'bellcrank.actor_id': '', 'bellcrank.club_slug': clubSlug ?? '' },
      fn,
      options,
    );
  }

  private async transact<T>(
    settings: LocalSettings,
    fn: (em: EntityManager) => Promise<T>,
    options: RunOptions,
    clubId: string | null = null,
  ): Promise<T> {
    for (let attempt = 1; ; attempt += 1) {
      try {
        return await this.once(settings, fn, options, clubId);
      } catch (error) {
        const again =
          options.retry !== false && attempt < MAX_ATTEMPTS && RETRYABLE_STATES.has(sqlStateOf(error) ?? '');
        if (!again) throw error;
        await pause(10 * attempt * attempt);
      }
    }
  }

  private async once<T>(
    settings: LocalSettings,
    fn: (em: EntityManager) => Promise<T>,
    options: RunOptions,
    clubId: string | null,
  ): Promise<T> {
    const runner = this.dataSource.createQueryRunner();
    // Read again by `committedClubOf`.
    if (clubId !== null && options.isolation === undefined) runner.data = { [CLUB]: clubId };
    try {
      await runner.connect();
      await runner.startTransaction(options.isolation);
      const all: LocalSettings = {
        ...settings,
        statement_timeout: String(options.statementTimeoutMs ?? this.config.databaseStatementTimeoutMs),
        idle_in_transaction_session_timeout: '60000',
        ...(options.readOnly ? { transaction_read_only: 'on' } : {}),
      };
      const names = Object.keys(all);
      const calls = names.map((_name, index) => `set_config($${2 * index + 1}, $${2 * index + 2}, true)`);
      await runner.query(
        `SELECT ${calls.join(', ')}`,
        names.flatMap((name) => [name, all[name]]),
      );
      const result = await fn(runner.manager);
      await (options.rehearse ? runner.rollbackTransaction() : runner.commitTransaction());
      return result;
    } catch (error) {
      // A lost connection cannot roll back, and its error must not hide the first one.
      if (runner.isTransactionActive) await runner.rollbackTransaction().catch(() => undefined);
      throw lostConnection(error) ?? error;
    } finally {
      await runner.release().catch(() => undefined);
    }
  }
}

/**
 * The club a transaction of `TenantDb.run` speaks for, where each of its statements sees what others have committed by then; null for
 * any other transaction.
 */
export function committedClubOf(em: EntityManager): string | null {
  const data = em.queryRunner?.data as { [CLUB]?: string } | undefined;
  return data?.[CLUB] ?? null;
}

/**
 * TypeORM takes a runner back as soon as its connection breaks, so inside a transaction "already released" means that
 * the connection was lost.
 */
function lostConnection(error: unknown): ProblemException | null {
  if (!/AlreadyReleasedError$/.test((error as Error | undefined)?.name ?? '')) return null;
  return new ProblemException('database-unavailable', { headers: { 'Retry-After': '5' }, cause: error });
}

/** @throws ProblemException 400 naming the field when the value is not a UUID. */
export function requireUuid(field: string, value: unknown): asserts value is string {
  if (typeof value !== 'string' || !isUUID(value))
    throw new ProblemException('identifier-malformed', { field });
}
