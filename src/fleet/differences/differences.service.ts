import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { AircraftRecords } from '../aircraft-records.js';
import { type NewDifference, DifferenceView } from './differences.dto.js';
import { Differences } from './differences.entity.js';

/** Equipment differences, which ask for a differences sign-off. */
@Injectable()
export class DifferencesService extends AircraftRecords<Differences, NewDifference, DifferenceView> {
  constructor(db: TenantDb) {
    super(db, { entity: Differences, noun: 'difference' }, DifferenceView);
  }

  /** No constraint keeps these two dates in order. */
  protected override check(_em: EntityManager, row: Partial<Differences>): Promise<void> {
    if (row.endedOn && row.since && row.endedOn < row.since) {
      const detail = 'A difference ends on or after the day it began. Check both dates.';
      throw new ProblemException('value-refused', { field: 'endedOn', detail });
    }
    return Promise.resolve();
  }
}
