import { PracticeRecord } from './records/practice-record.entity.js';

/** Entities of this folder, for the data source. */
export const PRACTICE_ENTITIES = [PracticeRecord];
