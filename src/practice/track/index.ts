export { readGpx, GPX_BOUNDS, type GpxProblem, type GpxReading } from './gpx.js';
export type { TrackAirfield } from './fields.js';
export type { TrackPoint } from './point.js';
export { propose, type Proposals, type LogProposal, type PracticeProposal } from './propose.js';
export { readTrack, type TrackReading } from './reading.js';
export { TRACK_SETTINGS, type TrackSettings } from './settings.js';
