import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { type InForce, maySign } from '../requirements/read-requirements.js';
import { meansGroup, subjectWords } from '../subjects.js';
import type { Loaded } from './load-progress.js';
import { type OpenDifference, type Progress, progressOf } from './progress-of.js';
import type { ProgressView } from './progress.dto.js';

/** Of every checkout in force, and of every change to be shown. */
export function viewsOf(loaded: Loaded, memberId: string, by: SignedIn): ProgressView[] {
  const known = loaded.of(memberId);
  const { inForce, asked } = loaded;
  const youTeach = hasAnyRole(by, 'instructor') && by.memberId !== memberId;
  return [
    ...inForce.map((requirement) =>
      viewOf(requirement, progressOf(requirement, known, inForce, asked), {
        youMaySign: youTeach && maySign(requirement, by.memberId),
      }),
    ),
    ...loaded.differencesOf(memberId).map((difference) => {
      const requirement = requirementOf(difference, inForce);
      if (!requirement) return bareDifference(difference, youTeach);
      const progress = progressOf(requirement, known, inForce, asked, difference.id);
      return viewOf(requirement, progress, {
        difference,
        youMaySign: youTeach && maySign(requirement, by.memberId),
      });
    }),
  ];
}

/** What lays down how a change is shown: the requirement of its equipment group. */
export const requirementOf = (
  { equipmentGroup }: { equipmentGroup: string },
  inForce: readonly InForce[],
): InForce | undefined => inForce.find((one) => one.kind === 'equipment' && meansGroup(equipmentGroup, one));

function viewOf(
  requirement: InForce,
  progress: Progress,
  of: { difference?: OpenDifference; youMaySign: boolean },
): ProgressView {
  const { version, kind, modelId, equipmentGroup, condition } = requirement;
  const { difference = null, youMaySign } = of;
  const { standing, quiz } = progress;
  return {
    ...{ requirementId: requirement.id, versionId: version.id, versionNumber: version.number },
    ...{ kind: difference ? 'differences' : kind, modelId, equipmentGroup, condition },
    subject: difference ? difference.registration : subjectWords(requirement),
    title: difference ? difference.title : version.title,
    difference: difference && differenceShort(difference),
    ...{ state: progress.state, ready: progress.ready, goodDays: version.goodDays, youMaySign },
    signOff: standing && {
      ...{
        checkoutId: standing.signOff.id,
        signedOn: standing.signOff.on,
        expiresOn: standing.signOff.expiresOn,
      },
      ...{ signedBy: standing.signOff.signedBy, likeModel: standing.likeModel },
    },
    items: progress.items.map(({ item, state, mark }) => ({
      ...{ itemId: item.id, position: item.position, title: item.title, standard: item.standard },
      ...{ manoeuvre: item.manoeuvre, required: item.required, state },
      mark: mark && { id: mark.id, on: mark.on, signedBy: mark.signedBy, note: mark.note },
    })),
    itemsLeft: progress.itemsLeft,
    quiz: quiz && version.quiz && { ...version.quiz, ...quiz },
    prerequisites: progress.prerequisites,
  };
}

/** Of a group for which nothing is laid down: an instructor shows the change and signs it. */
const bareDifference = (difference: OpenDifference, youMaySign: boolean): ProgressView => ({
  ...{ requirementId: null, versionId: null, versionNumber: null, kind: 'differences' },
  ...{ modelId: null, equipmentGroup: null, condition: null, subject: difference.registration },
  ...{ title: difference.title, difference: differenceShort(difference), state: 'ready', ready: true },
  ...{ goodDays: null, signOff: null, items: [], itemsLeft: 0, quiz: null, prerequisites: [], youMaySign },
});

const differenceShort = ({ memberId: _memberId, ...rest }: OpenDifference): ProgressView['difference'] =>
  rest;
