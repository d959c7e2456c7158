export { editionOn, judgeManoeuvre, type Measured, type MeasureVerdict, type Verdict } from './judge.js';
export { STANDARDS, type Edition, type Level, type Limits, type Measure, type Task } from './standards.js';
