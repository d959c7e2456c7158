import { ProblemException } from '../../platform/problems/index.js';
import { DamagedDecision } from '../stored-decision.js';

/** Runs `work`; a record that is not whole is told as the problem it is. @throws ProblemException 409 `decision-damaged` */
export async function damaged<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof DamagedDecision)) throw error;
    throw new ProblemException('decision-damaged', {
      detail: `The stored record of decision ${error.id} is not whole: ${error.because}. Have a safety officer verify the chain of decisions.`,
      cause: error,
    });
  }
}
