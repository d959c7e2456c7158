/** A sound body for every operation that takes one. `own` gives identifiers of the club the body is for. */

/** Identifiers of one club, by what they are of. */
export type Ids = Record<string, string>;
type Body = Record<string, unknown>;

const SIGNED = { signedBy: 'Mo Wrench, mechanic 0042' };
/** The day is the scene's own bookings', or one that nothing stands in the way of. */
const dayOf = (own: Ids): string => own.bookedDay ?? '2026-03-14';
const dual = (own: Ids): Body => ({
  ...{ departs: `${dayOf(own)}T18:00:00Z`, arrives: `${dayOf(own)}T20:00:00Z`, personsOnBoard: 2 },
  purpose: 'dual',
  memberId: own.memberId,
  instructorId: own.instructorMemberId,
});

const CHANGE = (own: Ids): Body => ({
  ...{ title: 'A second clock', doneOn: '2026-03-02', statement: 'Installed a clock', ...SIGNED },
  removes: [{ equipmentId: own.spareEquipmentId, negligible: true }],
  installs: [
    { kind: 'clock', name: 'Clock', basis: 'alteration-record', negligible: true, weightLb: 0.4, armIn: 20 },
  ],
});

const SEASON_VISIT = (own: Ids): Body => ({
  ...{ aircraftId: own.aircraftId, firstDay: '2026-04-13', lastDay: '2026-04-15' },
  work: [{ kind: 'need', id: own.itemId }],
});
const DIRECTIVE = (own: Ids): Body => ({
  ...{ issuer: 'FAA', number: '2026-05-12', title: 'Seat rails', effectiveOn: '2026-02-01' },
  ...{ appliesTo: 'aircraft', modelIds: [own.modelId], scope: 'all', recurring: false, withinDays: 400 },
});
const SHOP_TIMES = (own: Ids): Body => ({
  from: `${dayOf(own)}T15:00:00Z`,
  to: `${dayOf(own)}T21:30:00Z`,
});
const VISIT = (own: Ids): Body => ({
  ...{ title: 'Door seals', lines: [{ kind: 'other', title: 'Door seals' }], displace: true },
  ...(own.bookedDay === undefined ? {} : SHOP_TIMES(own)),
});
/** Of a visit without lines. */
const SIGNATURE = (own: Ids): Body => ({
  ...{ signerId: own.signerId, statement: 'Approved for return to service.', lines: [] },
  readings: [{ kind: 'tachometer', shownH: 1062 }],
  ...{ checkFlightNeeded: true, checkFlightBecause: 'Trim cables' },
});
const STATUS_FILE = 'section,title,days,last done,last done (h)\nitem,Wash,30,01/02/2026,1040\n';

const SYLLABUS = (): Body => ({
  ...{ title: 'Mountain checkout', goodDays: 730, quiz: null, prerequisiteIds: [], alsoModelIds: [] },
  items: [
    { title: 'Steep turn', standard: 'Within 100 ft, at 45 degrees of bank', manoeuvre: 'steep_turn' },
    { title: 'Way out', standard: 'Says before entering where to turn back', required: false },
  ],
});
const QUESTION = (): Body => ({
  ...{ topic: 'limits', kind: 'number', text: 'At what speed does it climb best?', unit: 'kt indicated' },
  ...{ rightValue: 71, tolerance: 1, reference: 'Invented handbook, section 4' },
});
const LOADING_SHEET = (): Body => ({
  ...{ source: 'Invented handbook, section 6', fuelKind: 'avgas' },
  stations: [
    { name: 'Seats', kind: 'seats', armIn: 81, seats: 2 },
    { name: 'Tanks', kind: 'fuel', armIn: 95, usableUsGal: 48 },
    { name: 'Baggage', kind: 'baggage', armIn: 142, maxLb: 120 },
  ],
  envelopes: [
    {
      category: 'normal',
      points: [
        { armIn: 82, weightLb: 1400 },
        { armIn: 86, weightLb: 2400 },
        { armIn: 93, weightLb: 2400 },
        { armIn: 93, weightLb: 1400 },
      ],
    },
  ],
});
const DISTANCES = {
  tables: [
    {
      ...{ weightLb: 2400, pressureAltitudesFt: [0, 6000], temperaturesC: [-10, 30] },
      groundRollFt: [
        [700, 900],
        [1100, 1400],
      ],
      over50Ft: [
        [1300, 1600],
        [2000, 2600],
      ],
    },
  ],
  factors: { headwindPercentPerKt: 1, surfaceIsOf: 'ground-roll' },
};
const PERFORMANCE_SHEET = (): Body => ({
  ...{ source: 'Invented handbook, section 5', liftOffKias: 50 },
  ...{ takeoff: DISTANCES, landing: DISTANCES },
});

/** A flight of this morning, which the scene has out or back. */
const FLOWN = (own: Ids): Body => ({
  ...{ departedAt: '2026-03-10T13:05:00Z', arrivedAt: '2026-03-10T14:20:00Z' },
  ...{ fromAirfield: 'XQHB', toAirfield: 'XQHB', meters: [{ kind: 'tachometer', shownH: 1051.2 }] },
  entries: [
    {
      ...{ memberId: own.memberId, role: 'pilot-in-command', soleManipulator: true, totalH: 1.2, nightH: 0 },
      ...{ crossCountryH: 0, takeoffs: 1, landings: 1, fullStopLandings: 1 },
      ...{ nightTakeoffs: 0, nightFullStopLandings: 0 },
    },
  ],
});

export const PASSWORD = 'seven brown otters at the ferry';

/** By operation id. A PATCH without an entry is sent an empty change. */
export const BODIES: Record<string, (own: Ids) => Body> = {
  lookAtDispatch: () => ({ personsOnBoard: 2 }),
  dispatchFlight: () => ({
    ...{ personsOnBoard: 2, fuelUsGal: 30, squawksSeen: [], selfAssessed: true },
    meters: [{ kind: 'tachometer', shownH: 1062 }],
  }),
  takeDispatchBack: () => ({ reason: 'Not flown after all' }),
  proposeReturn: () => ({
    ...{ departedAt: '2026-03-10T13:05:00Z', arrivedAt: '2026-03-10T14:20:00Z' },
    ...{ fromAirfield: 'XQHB', toAirfield: 'XQHB' },
  }),
  returnFlight: FLOWN,
  correctReturn: (own) => ({ ...FLOWN(own), replacesId: own.returnId, because: 'Misread' }),
  setDueBack: () => ({ dueBackAt: '2026-03-10T16:30:00Z' }),
  setOverdueContacts: (own) => ({ contacts: [{ memberId: own.memberId, afterMinutes: 30 }] }),
  goOnStandby: (own) => ({
    ...{
      departs: '2026-03-17T18:00:00Z',
      arrives: '2026-03-17T20:00:00Z',
      personsOnBoard: 1,
      purpose: 'solo',
    },
    aircraftId: own.aircraftId,
  }),
  bookAny: (own) => ({ ...dual(own), aircraftIds: [own.aircraftId] }),
  addTeachingHours: () => ({ kind: 'weekly', weekday: 6, opens: '09:00', closes: '17:00' }),
  previewErasure: () => ({ reason: 'Asked in writing' }),
  eraseMember: () => ({ reason: 'Asked in writing' }),
  signIn: () => ({ club: 'no-such-club', email: 'nobody@larkfield.example', password: PASSWORD }),
  refreshTokens: () => ({ refreshToken: 'none' }),
  signOut: () => ({ refreshToken: 'none' }),
  changeMyPassword: () => ({ currentPassword: 'not the one', newPassword: PASSWORD }),
  createAccount: () => ({ password: PASSWORD }),
  resetPassword: () => ({ password: PASSWORD }),
  addModelLoading: LOADING_SHEET,
  replaceModelLoading: LOADING_SHEET,
  addAircraftLoading: LOADING_SHEET,
  replaceAircraftLoading: LOADING_SHEET,
  addModelPerformance: PERFORMANCE_SHEET,
  replaceModelPerformance: PERFORMANCE_SHEET,
  addAircraftPerformance: PERFORMANCE_SHEET,
  replaceAircraftPerformance: PERFORMANCE_SHEET,
  editClub: () => ({ name: 'Larkfield Flyers' }),
  addAirfield: () => ({
    ...{ code: 'XLKF', name: 'Larkfield', latitudeDeg: 41.25, longitudeDeg: -93.5, elevationFt: 912 },
    zone: 'America/Chicago',
  }),
  editAirfield: () => ({ name: 'Larkfield East' }),
  addRunway: () => ({ designator: '18', trueHeadingDeg: 181, lengthFt: 3000, surface: 'grass', lit: false }),
  editRunway: () => ({ lengthFt: 3100 }),
  addPolicyValue: () => ({
    ...{ parameterId: 'club.model-recency.days', validFrom: '2026-04-01', value: 45 },
    reference: 'Committee minutes of 2 March 2026',
  }),
  editPolicyValue: () => ({ value: 44 }),
  checkClubRule: () => ({ requirement: 'flight.passengers == 0' }),
  addClubRule: () => ({
    ...{ slug: 'early-birds', title: 'No departure before nine', weight: 'advice', message: 'Depart later.' },
    ...{ requirement: '!flight.departsBefore("09:00")', document: 'Handbook, section 9' },
  }),
  editClubRule: () => ({ title: 'Not before nine' }),
  addClubRuleVersion: () => ({}),
  activateClubRule: () => ({ from: '2026-04-01' }),
  endClubRule: () => ({ to: '2026-05-01' }),
  dryRunClubRule: () => ({ lookAt: 10 }),
  addModel: () => ({
    ...{ makeModel: 'Wrenfield Sparrow 2', typeDesignator: 'WSP2', category: 'airplane', engines: 1 },
    ...{ class: 'single-engine-land', retractableGear: false, flaps: true, controllablePropeller: false },
    ...{ tailwheel: false, pressurised: false, kindsOfOperation: ['day-vfr'] },
  }),
  editModel: () => ({ flaps: false }),
  addAircraft: (own) => ({
    ...{ registration: 'XB-101', modelId: own.modelId, homeAirfieldId: own.airfieldId, seats: 4 },
    ...{ occupantsCertificated: 4, certificatedAfter19960311: false, instructionForHire: true },
    ...{ carriesForHire: false, inspectionMeter: 'tachometer' },
  }),
  editAircraft: (own) => ({ modelId: own.modelId, homeAirfieldId: own.airfieldId }),
  addEquipmentPiece: () => ({ kind: 'clock', name: 'A second clock', installedOn: '2020-01-01' }),
  editEquipmentPiece: () => ({ name: 'Another clock' }),
  addReading: () => ({ kind: 'hobbs', shownH: 812.3, readAt: '2026-03-10T12:00:00Z' }),
  voidReading: () => ({ reason: 'Two digits swapped' }),
  addWeighing: () => ({
    effectiveOn: '2026-03-01',
    emptyWeightLb: 1452.5,
    emptyArmIn: 39.2,
    source: 'weighing',
  }),
  // Of today, so that the flights of the scene are covered: an aircraft whose terms have ended does not fly.
  addInsurance: (own) => ({
    ...{ source: 'Pilot clause', validFrom: '2026-01-01', validThrough: '2027-12-31' },
    ...{ minimums: { leastLevel: 'private', mostAgeYears: 99 }, namedPilotIds: [own.memberId] },
  }),
  endInsurance: () => ({ through: '2027-06-30', because: 'The policy was changed' }),
  setAircraftRate: () => ({
    ...{ validFrom: '2026-01-01', perHourMinor: 14_500, basis: 'hobbs', fuel: 'wet', fuelPerUsGalMinor: 600 },
  }),
  setInstructionRate: () => ({ validFrom: '2026-01-01', perHourMinor: 6500 }),
  chargeFlight: (own) => ({
    ...{ departedAt: '2026-03-13T18:05:00Z', arrivedAt: '2026-03-13T19:30:00Z', hobbsH: 1.3 },
    ...{ payerId: own.memberId, instructorId: own.instructorMemberId, instructionMinutes: 60 },
  }),
  recordReceipt: () => ({ amountMinor: 5000, receivedOn: '2026-03-09', words: 'Receipt 12' }),
  adjustAccount: () => ({ amountMinor: 2500, reason: 'Key lost' }),
  reverseEntry: () => ({ reason: 'Key found' }),
  recordMemberCheck: () => ({ kind: 'identity', seenOn: '2026-01-15', expiresOn: '2031-01-15' }),
  voidMemberCheck: () => ({ reason: 'Recorded of the wrong member' }),
  previewEquipmentChange: (own) => CHANGE(own),
  makeEquipmentChange: (own) => CHANGE(own),
  takeEquipmentChangeBack: () => ({ reason: 'Entered for the wrong aircraft' }),
  previewStatusImport: () => ({ csv: STATUS_FILE, dates: 'day-first' }),
  importStatus: () => ({ csv: STATUS_FILE, dates: 'day-first', preview: 'of nothing' }),
  planSeason: (own) => ({ weeks: 4, pins: [{ aircraftId: own.aircraftId, on: '2026-03-18' }] }),
  previewDirective: (own) => DIRECTIVE(own),
  addDirective: (own) => DIRECTIVE(own),
  editDirective: () => ({ title: 'Seat rails and stops' }),
  addDirectiveFinding: () => ({ applies: false, because: 'Rails replaced', ...SIGNED }),
  addTemplate: () => ({ kind: 'club', title: 'Wash', scope: 'advice', calendarMonths: 1 }),
  editTemplate: () => ({ calendarMonths: 2 }),
  putTemplatesOn: () => ({ codes: ['any.weighing'] }),
  addSigner: () => ({
    ...{ name: 'Mo Wrench', certificate: '0042', holds: 'inspection-authorization', validFrom: '2020-01-01' },
  }),
  editSigner: () => ({ validThrough: '2027-03-31' }),
  planWorkOrder: (own) => VISIT(own),
  previewWorkOrder: (own) => VISIT(own),
  setWorkTimes: (own) => SHOP_TIMES(own),
  previewWorkTimes: (own) => SHOP_TIMES(own),
  addWorkLine: (own) => ({ kind: 'squawk', aboutId: own.keptSquawkId }),
  beginWork: () => ({}),
  cancelWork: () => ({ because: 'The parts are late' }),
  returnToService: (own) => SIGNATURE(own),
  previewReturnToService: (own) => SIGNATURE(own),
  logCheckFlight: (own) => ({
    ...{ flownAt: '2026-03-10T15:00:00Z', entry: 'Flown, no remarks.', pilotId: own.instructorMemberId },
  }),
  previewSeason: (own) => ({ visits: [SEASON_VISIT(own)] }),
  acceptSeason: (own) => ({ visits: [SEASON_VISIT(own)] }),
  addWish: () => ({ title: 'A second navigator', shopDays: 3, worthHours: 20 }),
  editWish: () => ({ worthHours: 25 }),
  forecastMaintenance: (own) => ({ aircraftIds: [own.aircraftId], weeks: 4 }),
  addAirworthinessItem: (own) => ({
    ...{ kind: 'club', title: 'Oil change', scope: 'all', intervalH: 50, equipmentId: own.equipmentId },
  }),
  editAirworthinessItem: (own) => ({ equipmentId: own.equipmentId }),
  addCompliance: () => ({ doneOn: '2026-03-01', doneH: 1040, statement: 'Changed the oil', ...SIGNED }),
  addRegistration: () => ({ issuedOn: '2025-05-10' }),
  editRegistration: () => ({ endedOn: '2026-01-01' }),
  addPermit: () => ({ validFrom: '2026-03-01', validThrough: '2026-03-20', purpose: 'To the shop' }),
  editPermit: () => ({ purpose: 'To the paint shop' }),
  addDifference: () => ({
    title: 'A glass panel',
    since: '2024-01-01',
    equipmentGroup: 'panel',
    endedOn: '2024-02-01',
  }),
  editDifference: () => ({ title: 'Another panel' }),
  reportSquawk: (own) => ({ title: 'Landing light out', equipmentId: own.equipmentId }),
  findSimilarSquawks: (own) => ({ title: 'Landing light out', equipmentId: own.equipmentId }),
  editSquawk: (own) => ({ title: 'Landing light dim', equipmentId: own.equipmentId }),
  deferSquawk: () => ({
    ...{ deferredOn: '2026-03-10', deadlineOn: '2026-04-10', requiredByTypeDesign: false },
    ...{ requiredByEquipmentList: false, requiredByDirective: false, removedOrDeactivated: true },
    ...{ placarded: true, recorded: true, noHazardDeterminedBy: 'Mo Wrench, mechanic 0042' },
  }),
  fixSquawk: () => ({
    ...{ correctiveAction: 'Replaced the lamp', ...SIGNED, signedCertificate: 'mechanic 0042' },
    parts: [{ partNumber: 'GL-4509', name: 'Lamp', quantity: 1 }],
  }),
  markSquawkDuplicate: (own) => ({ ofSquawkId: own.keptSquawkId }),
  reopenSquawk: () => ({ because: 'It went out again' }),
  previewSquawkStep: () => ({ step: 'ground' }),
  clearSquawk: () => ({ finding: 'Ran it for ten minutes, no fault', ...SIGNED }),
  editDeferral: () => ({ placarded: true }),
  fileSafetyReport: (own) => ({
    ...{ kind: 'hazard', happenedOn: '2026-03-09', aircraftId: own.aircraftId, title: 'Loose gravel' },
    ...{ place: 'Taxiway', narrative: 'Gravel lay on the taxiway before the hangar.', confidential: false },
  }),
  readReceipt: (own) => ({ receipt: own.receipt }),
  addSafetyStep: (own) => ({
    ...{ what: 'Sweep the taxiway', responsibleId: own.instructorMemberId, dueOn: '2026-03-20' },
  }),
  editSafetyStep: (own) => ({ responsibleId: own.instructorMemberId }),
  closeSafetyReport: () => ({ finding: 'Swept, and swept weekly from now on.' }),
  reviewOverride: () => ({ reviewOn: '2026-04-01', finding: 'Flown without remarks' }),
  createMember: () => ({
    ...{
      name: 'Noa New',
      email: 'noa.new@larkfield.example',
      membershipFrom: '2026-01-01',
      roles: ['member'],
    },
  }),
  updateMember: () => ({ name: 'Noa Newer' }),
  setStanding: () => ({ standing: 'good', since: '2026-01-01' }),
  createCertificate: () => ({
    ...{ level: 'private', issuedOn: '2019-06-01' },
    ratings: [{ category: 'airplane', class: 'single-engine-land' }],
  }),
  updateCertificate: () => ({ level: 'private' }),
  createInstructorCertificate: () => ({ issuedOn: '2025-01-10', ratings: ['airplane-single-engine'] }),
  updateInstructorCertificate: () => ({ issuedOn: '2025-01-11' }),
  suspendCertificate: () => ({ from: '2026-01-01' }),
  updateCertificateSuspension: () => ({ to: '2026-02-01' }),
  suspendInstructorCertificate: () => ({ from: '2026-01-01' }),
  updateInstructorCertificateSuspension: () => ({ to: '2026-02-01' }),
  createMedical: () => ({ class: 3, examOn: '2025-05-05' }),
  updateMedical: () => ({ class: 2 }),
  createBasicMed: () => ({ examOn: '2024-03-01', courseOn: '2024-03-05' }),
  updateBasicMed: () => ({ courseOn: '2024-03-06' }),
  createReview: () => ({ kind: 'flight-review', reviewedOn: '2025-04-04', groundH: 1.1, flightH: 1.3 }),
  updateReview: () => ({ flightH: 1.4 }),
  createEndorsement: (own) => ({
    ...{ kind: 'tailwheel', endorsedOn: '2024-08-08', givenBy: own.instructorMemberId },
  }),
  updateEndorsement: (own) => ({ givenBy: own.instructorMemberId }),
  createRating: () => ({ kind: 'night', issuedOn: '2024-08-08' }),
  updateRating: () => ({ validThrough: '2027-08-31' }),
  createLogEntry: (own) => ({
    ...{ aircraftId: own.aircraftId, departedAt: '2026-03-09T16:00:00Z', arrivedAt: '2026-03-09T17:30:00Z' },
    ...{ fromAirfield: 'XQHB', toAirfield: 'XQHB', role: 'pilot-in-command', soleManipulator: true },
    ...{ takeoffs: 3, landings: 3, fullStopLandings: 2, nightTakeoffs: 0, nightFullStopLandings: 0 },
    totalH: 1.4,
  }),
  updateLogEntry: (own) => ({ aircraftId: own.aircraftId }),
  addPractice: () => ({
    ...{ flownOn: '2026-03-01', manoeuvre: 'steep_turn', toStandard: true, note: 'Smooth air' },
    measured: { altitudeDevFt: { least: -60, most: 40 } },
  }),
  setLimits: () => ({
    ...{ windKt: 18, crosswindKt: 8, visibilityDaySm: 5, night: false, note: 'Until the first solo' },
    from: '2026-03-12',
  }),
  correctPractice: () => ({ because: 'Entered for another day', record: null }),
  planPractice: () => ({ minutes: 60, instructor: true }),
  confirmTrack: () => ({
    trackSha256: 'a'.repeat(64),
    practice: [{ event: 'landing-1', flownOn: '2026-03-01', manoeuvre: 'normal_landing' }],
  }),
  signCheckout: (own) => ({ kind: 'model', modelId: own.modelId, signedOn: '2026-03-01' }),
  voidCheckout: () => ({ reason: 'Signed for the wrong member' }),
  addRequirement: () => ({ ...SYLLABUS(), kind: 'condition', condition: 'mountain' }),
  editRequirement: (own) => ({ instructorIds: [own.instructorMemberId] }),
  writeRequirementDraft: () => SYLLABUS(),
  addQuestion: () => QUESTION(),
  editQuestion: () => ({ text: 'At what speed does it climb best?' }),
  handInQuiz: (own) => ({ answers: [{ questionId: own.questionId, value: 71 }] }),
  signCheckoutItem: (own) => ({
    itemId: own.itemToSignId,
    outcome: 'not-yet',
    note: 'Rolled out late twice',
  }),
  correctCheckoutItem: () => ({ because: 'Entered for another member', record: null }),
  ask: (own) => ({ ...dual(own), aircraftIds: [own.aircraftId] }),
  askTimeline: (own) => {
    const { departs: from, arrives: to, ...flight } = dual(own);
    return { ...flight, from, to, durationMinutes: 90, aircraftIds: [own.aircraftId] };
  },
  streamClubTimelines: (own) => ({
    ...{ purpose: 'solo', personsOnBoard: 1, durationMinutes: 90, aircraftIds: [own.aircraftId] },
    ...{ from: `${dayOf(own)}T18:00:00Z`, to: `${dayOf(own)}T20:00:00Z` },
  }),
  book: (own) => ({ ...dual(own), aircraftId: own.aircraftId }),
  editBooking: () => ({ arrives: '2026-03-13T19:30:00Z' }),
  cancelBooking: () => ({ reason: 'A cold' }),
  offerHandOver: (own) => ({ toId: own.newMemberId }),
  acceptHandOver: () => ({}),
  bookSeries: (own) => ({ ...dual(own), aircraftId: own.aircraftId, recurrence: 'FREQ=WEEKLY;COUNT=2' }),
  editSeries: (own) => ({ fromBookingId: own.seriesBookingId, lastsMinutes: 90 }),
  cancelSeries: (own) => ({ fromBookingId: own.seriesBookingId, reason: 'A cold' }),
  holdSlot: (own) => ({
    ...{ aircraftId: own.aircraftId, memberId: own.memberId },
    ...{ departs: '2026-03-30T18:00:00Z', arrives: '2026-03-30T20:00:00Z' },
  }),
  confirmHold: () => ({}),
  editBlock: () => ({ note: 'annual inspection, moved' }),
  setNoticePreferences: () => ({
    ...{ choices: [{ kind: 'lapse', delivery: 'daily' }], digestHour: 7 },
    ...{ quietFrom: '21:30', quietTo: '07:00' },
  }),
  makeFeed: (own) => ({ shows: 'aircraft', aircraftId: own.aircraftId, title: 'The Lark' }),
  verifyChain: () => ({}),
  replayDecisions: () => ({ limit: 5 }),
  blockAircraft: (own) => ({
    ...{ aircraftId: own.aircraftId, kind: 'maintenance', note: 'annual inspection' },
    ...{ from: `${dayOf(own)}T22:00:00Z`, to: `${dayOf(own)}T23:00:00Z` },
  }),
};

/** Fields that the sound body does not have, with what else they need. */
export const ALSO: Record<string, Record<string, (own: Ids, foreign: string) => Body>> = {
  addRequirement: {
    modelId: (_own, foreign) => ({ ...SYLLABUS(), kind: 'model', modelId: foreign }),
    alsoModelIds: (own, foreign) => ({
      ...{ ...SYLLABUS(), kind: 'model', modelId: own.spareModelId, alsoModelIds: [foreign] },
    }),
  },
  createLogEntry: {
    modelId: (own, foreign) => ({ ...BODIES['createLogEntry']!(own), aircraftId: null, modelId: foreign }),
  },
  signCheckout: {
    aircraftId: (own, foreign) => ({
      kind: 'differences',
      signedOn: '2026-03-01',
      aircraftId: foreign,
      modelId: null,
    }),
  },
};
