/** Who may call what on somebody else's record: the contract of the roles, written by hand and not read from the code. */
import { ROLES, type Role } from '../../../src/accounts/roles.js';

/** Operations for everybody, signed in or not, in the order of the description. */
export const OPEN = [
  ...['healthLive', 'healthReady', 'listProblems', 'explainProblem'],
  ...['signIn', 'refreshTokens', 'signOut'],
  ...['unsubscribe', 'showUnsubscribing', 'readFeed'],
];

const ALL: readonly Role[] = ROLES;
const READERS: Role[] = ['instructor', 'safety-officer', 'administrator'];
const OFFICERS: Role[] = ['safety-officer', 'administrator'];
const COORDINATORS: Role[] = ['maintenance-coordinator', 'administrator'];
const ADMINISTRATOR: Role[] = ['administrator'];

const INSTRUCTOR: Role[] = ['instructor'];
const COORDINATOR: Role[] = ['maintenance-coordinator'];

const TABLE: [RegExp, readonly Role[]][] = [
  [/^(getMe|changeMyPassword)$/, ALL],
  [/^(get|create|delete)Account$|^resetPassword$/, ADMINISTRATOR],
  // The fleet, the field and the policy are for everybody to read; the club's frame is the administrator's to change.
  [/^read(RuleBook|Rule)$/, ALL],
  [/^read(Club|Airfield|Policy|Model|Aircraft)$|^list(Airfields|Models|Aircraft)$/, ALL],
  [/^listPolicyChanges$/, OFFICERS],
  [/^(read|list)ClubRules?$|^readRuleSchema$/, ALL],
  [/^(check|add|edit|remove|activate|end)ClubRule$|^addClubRuleVersion$/, OFFICERS],
  [/^dryRunClubRule$|^readDryRun$|^listDryRunChanges$/, OFFICERS],
  [/^editClub$|^(add|edit|remove)(Airfield|Runway|PolicyValue)$/, ADMINISTRATOR],
  [/^(add|remove)(Model|Aircraft)$/, ADMINISTRATOR],
  [/^edit(Model|Aircraft)$/, COORDINATORS],
  // The aircraft's facts: everybody reads and reports, the coordinator writes.
  [
    /^list(Equipment|Readings|AirworthinessItems|Compliances|Registrations|Permits|Differences|Squawks)$/,
    ALL,
  ],
  [/^read(EquipmentPiece|Meters|AirworthinessItem|Registration|Permit|Difference|Squawk|Deferral)$/, ALL],
  [/^listInsurance$/, ALL],
  [/^(add|end)Insurance$/, [...COORDINATOR, ...OFFICERS]],
  [/^read(Model|Aircraft)(Loading|Performance)$/, ALL],
  [/^(add|replace|remove)(Model|Aircraft)(Loading|Performance)$/, COORDINATORS],
  [/^list(Weighings|EquipmentChanges)$/, ALL],
  [/^(addWeighing|voidWeighing|voidReading)$/, COORDINATOR],
  [/^(preview|make)EquipmentChange$|^takeEquipmentChangeBack$/, COORDINATOR],
  [/^(read|print|export)Status$/, ALL],
  [/^(previewStatusImport|importStatus)$/, [...COORDINATOR, ...OFFICERS]],
  [/^forecastMaintenance$/, ALL],
  [/^readMeterRates$/, [...COORDINATOR, ...OFFICERS]],
  [/^(preview|accept)Season$/, COORDINATOR],
  [/^planSeason$/, [...COORDINATOR, ...OFFICERS]],
  [/^(listWorkOrders|readWorkOrder|listDisplacements)$/, ALL],
  [/^(plan|preview)WorkOrder$|^(set|preview)WorkTimes$|^(add|remove)WorkLine$/, COORDINATOR],
  [/^(begin|cancel)Work$|^(preview)?[rR]eturnToService$/, COORDINATOR],
  // And who flew it.
  [/^logCheckFlight$/, COORDINATORS],
  [/^(list|add|edit)Signers?$/, COORDINATORS],
  [/^(listDirectives|readDirectivesOf|listTemplates)$/, ALL],
  [/^(preview|add|edit)Directive$|^addDirectiveFinding$/, COORDINATOR],
  [/^(add|edit|remove)Template$|^putTemplatesOn$/, COORDINATOR],
  // Nobody but whose flight it was.
  [/^putDisplacementAway$/, []],
  [/^(listWishes|readWish)$/, ALL],
  [/^(add|edit|remove)Wish$/, COORDINATOR],
  [/^(report|findSimilar)Squawks?$|^readSquawk(Photo|History)$/, ALL],
  [/^(add|edit|remove)(EquipmentPiece|AirworthinessItem|Registration|Permit|Difference)$/, COORDINATOR],
  [/^(addReading|addCompliance|voidCompliance)$/, COORDINATOR],
  [/^(edit|ground|defer|fix|clear|reopen)Squawk$|^editDeferral$/, COORDINATOR],
  [/^markSquawkDuplicate$|^previewSquawkStep$|^readDeferralGuide$/, COORDINATOR],
  // And who reported it.
  [/^addSquawkPhoto$/, COORDINATOR],
  // Hazards and occurrences: anybody tells, officers follow them up; whoever sees to a step records it.
  [/^(fileSafetyReport|listSafetyReports|readReceipt)$/, ALL],
  [/^(readSafetyReport|addSafetyStep|editSafetyStep|closeSafetyReport)$/, OFFICERS],
  [/^(read|export)(Lapses|Refusals|PracticeGaps)$|^listOverrides$|^reviewOverride$/, OFFICERS],
  // People.
  [/^listMemberNames$/, ALL],
  // And instructors, of their students.
  [/^(listMembers|getMember)$/, OFFICERS],
  [/^(createMember|updateMember)$/, ADMINISTRATOR],
  [/^setStanding$/, OFFICERS],
  // And instructors, of their students.
  [
    /^list(Certificates|InstructorCertificates|Medicals|BasicMedRecords|Reviews|Endorsements|Ratings)$/,
    OFFICERS,
  ],
  [
    /^(create|update|delete|verify)(Certificate|InstructorCertificate|Medical|BasicMed|Review|Rating)$/,
    OFFICERS,
  ],
  [/^(create|update|verify)Endorsement$/, READERS],
  [/^deleteEndorsement$/, OFFICERS],
  [/^suspend(Instructor)?Certificate$|^(update|delete)(Instructor)?CertificateSuspension$/, OFFICERS],
  [/^listUnverifiedPapers$/, OFFICERS],
  [/^(listMemberChecks|readPapersHold)$/, OFFICERS],
  [/^(record|void)MemberCheck$/, OFFICERS],
  [/^listDocuments$/, OFFICERS],
  [/^(add|read|remove)Document$/, OFFICERS],
  // One's own.
  [/^exportMyRecord$/, ALL],
  [/^(preview|erase)(Erasure|Member)$/, ADMINISTRATOR],
  // Flying.
  // And instructors, of their students.
  [/^(listLogEntries|getLogTotals|exportLog(Csv|Json))$/, OFFICERS],
  [/^listCheckouts$/, READERS],
  [/^readRecency$/, OFFICERS],
  [/^(create|update|void)LogEntry$/, ADMINISTRATOR],
  [/^listLogImports$/, OFFICERS],
  [/^(previewLogImport|importLog|takeLogImportBack)$/, ADMINISTRATOR],
  // And instructors, of their students; officers are shown what an instructor signed.
  [/^listPractice$/, OFFICERS],
  // Only one's own, and one's students'.
  [/^(readRust|planPractice)$/, []],
  [/^(readLimits|suggestLimits)$/, OFFICERS],
  // One's own; for somebody else, signed or set by an instructor.
  [/^(addPractice|setLimits)$/, INSTRUCTOR],
  // Only what an instructor signed.
  [/^correctPractice$/, OFFICERS],
  [/^(readTrack|confirmTrack)$/, ADMINISTRATOR],
  [/^signCheckout$/, INSTRUCTOR],
  // And the instructor who signed it.
  [/^voidCheckout$|^correctCheckoutItem$/, OFFICERS],
  // What checkouts ask for is for everybody to read and for officers to lay down; the answers are for officers.
  [/^(list|read)Requirements?$|^listRequirementVersions$/, ALL],
  [/^(add|edit|publish)Requirement$|^(write|remove)RequirementDraft$/, OFFICERS],
  [/^(list|add|edit|remove)Questions?$/, OFFICERS],
  // A quiz is taken for oneself.
  [/^startQuiz$/, ALL],
  [/^handInQuiz$/, []],
  [/^(readQuizAttempt|listQuizAttempts|listCheckoutMarks|readCheckoutProgress)$/, READERS],
  [/^(signCheckoutItem|listStudents)$/, INSTRUCTOR],
  // And instructors, of their students and of lessons with themselves.
  [
    /^(ask|getDecision|explain(Decision|Finding)|replayDecision|waysToYes|workLoading|workWeather|book)$/,
    OFFICERS,
  ],
  // When somebody may fly: as one asks for a decision; everybody at once is for officers.
  [/^askTimeline$/, OFFICERS],
  [/^streamClubTimelines$/, OFFICERS],
  // What things cost is for everybody; accounts are one's own, and the administrator's.
  [/^(listAircraftRates|listInstructionRates|estimateCharges)$/, ALL],
  [/^set(Aircraft|Instruction)Rate$|^list(Uncharged|Balances)$|^chargeFlight$/, ADMINISTRATOR],
  [/^(getStatement|exportStatementCsv)$/, ADMINISTRATOR],
  [/^(recordReceipt|adjustAccount|reverseEntry)$/, ADMINISTRATOR],
  // The chain of decisions, and replays of all of them.
  [/^(readChain|sealChain|verifyChain|replayDecisions)$/, OFFICERS],
  // One's own decisions; another member's are asked for in the query.
  [/^listDecisions$/, ALL],
  [/^(listBookings|getBooking)$/, ALL],
  // One's own; another member's are asked for in the query.
  [/^listStandingAnswers$/, ALL],
  [/^(getStandingAnswer|waysForStandingAnswer)$/, OFFICERS],
  [/^(cancelBooking|offerHandOver|closeHandOver|cancelSeries)$/, OFFICERS],
  // And who is aboard, or was.
  [/^(editBooking|editSeries|acceptHandOver|confirmHold)$/, OFFICERS],
  [/^listBookingChanges$/, READERS],
  // And instructors, for their students.
  [/^(bookSeries|bookAny)$/, OFFICERS],
  // One's own; the flights of a series are in the calendar anyway.
  [/^(listHandOvers|readSeries)$/, ALL],
  [/^holdSlot$/, INSTRUCTOR],
  [/^(blockAircraft|editBlock)$/, COORDINATORS],
  // One's own, whoever one is; an id of somebody else's is unknown.
  [/^(listNotices|readAllNotices|(read|set)NoticePreferences|listFeeds|makeFeed|listenLive)$/, ALL],
  [/^(readNotice|revokeFeed)$/, []],
  [/^(listUndeliveredMail|retryMail)$/, OFFICERS],
  // From dispatch to return: its crew, and who may ask for anybody or keeps the hours.
  // Looking at it judges anew, so that an instructor's students' alone.
  [/^(lookAtDispatch|dispatchFlight)$/, OFFICERS],
  [/^(readFlight|takeDispatchBack|proposeReturn|returnFlight|setDueBack)$/, [...READERS, ...COORDINATOR]],
  // And the pilot.
  [/^correctReturn$/, [...COORDINATOR, ...OFFICERS]],
  [/^list(FlightsOut|OverdueAlerts|OverdueContacts)$/, ALL],
  [/^setOverdueContacts$/, OFFICERS],
  // Nobody but who was told.
  [/^putOverdueAway$/, []],
  // One goes on standby for oneself, and answers what is offered to oneself.
  [/^(list|goOn)Standby$/, ALL],
  [/^(get|withdraw)Standby$|^(accept|decline)StandbyOffer$/, []],
  [/^listFreeInstructors$|^readTeachingHours$/, ALL],
  // And the instructor whose hours they are.
  [/^(add|remove)TeachingHours$/, ADMINISTRATOR],
];

/** Roles that may call the operation for a member who is not themselves. */
export function allowedTo(operationId: string): readonly Role[] {
  const found = TABLE.filter(([pattern]) => pattern.test(operationId));
  if (found.length !== 1) throw new Error(`${operationId} has ${found.length} entries in the table of roles`);
  return found[0]![1];
}
