/** The library's door: every public name, and where it lives. */

export { decodePhoto } from './adapters/photo/decode.ts';
export { solveWithHighs } from './adapters/solver/highs.ts';
export { alongInput } from './contract/along.ts';
export { type ChartFile, chartFile } from './contract/chart.ts';
export { type JobFile, jobFile, jobFileText } from './contract/job-file.ts';
export { type KitQuestion, kitQuestion } from './contract/kit.ts';
export { lineFromTable, lineInput, type PastedLine } from './contract/line.ts';
export { type NewJob, newJob } from './contract/new-job.ts';
export { type PartsAsk, partsInput } from './contract/parts.ts';
export { type PastedPlate, plateFromTable, plateInput } from './contract/plate.ts';
export { type PrintAsk, printAsk } from './contract/print.ts';
export { BadInput, type Issue, parsedJson } from './contract/refusal.ts';
export { restInput } from './contract/rest.ts';
export { siteInput } from './contract/site.ts';
export { steerInput, writtenSteerInput } from './contract/steer.ts';
export { typedSum } from './contract/sum-typed.ts';
export { type SumQuestion, sumQuestion } from './contract/sums.ts';
export { type Template, templateInput } from './contract/template.ts';
export { testListInput } from './contract/test-list.ts';
export { caseInput } from './contract/worked-case.ts';
export type { Feature, Target } from './core/body/feature.ts';
export type { Pad } from './core/body/pad.ts';
export type { Slide } from './core/body/slide.ts';
export type { Vector } from './core/body/vector.ts';
export type { AcceptanceTest, TestList } from './core/chart/acceptance-test.ts';
export { bandOf, scaledLimit } from './core/chart/limit.ts';
export { canProve, type Proof } from './core/kit/can-prove.ts';
export { gradeLimit } from './core/kit/grade.ts';
export { type HingeReading, type HingeTest, readHinge } from './core/kit/hinge.ts';
export type { Instrument, Kit, KitTarget, Reference, SetUp } from './core/kit/kit.ts';
export { straightedgeReversal } from './core/kit/reversal.ts';
export { type RockReading, type RockTest, readRock } from './core/kit/rock.ts';
export type { Deed, Entry, JobPlan } from './core/ledger/entry.ts';
export { foldJob, type Job } from './core/ledger/job.ts';
export { steerInput as jobSteerInput } from './core/ledger/steer-input.ts';
export type { Height } from './core/observe/height.ts';
export type { Level } from './core/observe/level.ts';
export type { PassSize, Print, Round, Scraped, SinkLimit, SteerInput } from './core/observe/round.ts';
export type { Sweep } from './core/observe/sweep.ts';
export type { SteerAnswer } from './core/plan/answer.ts';
export type { BindingLimit, NoAnswer } from './core/plan/problem.ts';
export type { LinearProgram, Solution, Solve } from './core/plan/program.ts';
export type { Exclusion } from './core/print/exclusion.ts';
export {
  type ForetoldAgreement,
  type ForetoldZone,
  foretellPrint,
  foretoldAgreement,
} from './core/print/foretold.ts';
export type { Corners, Picture, SurfaceSize } from './core/print/picture.ts';
export { monteCarlo } from './core/prove/monte-carlo.ts';
export { propagate } from './core/prove/propagate.ts';
export { judge, verdict } from './core/prove/verdict.ts';
export { readDeviation } from './core/quantity/deviation.ts';
export { readLength } from './core/quantity/length.ts';
export { sayDeviation } from './core/quantity/say.ts';
export { readSlope, saySlope } from './core/quantity/slope.ts';
export type { RestAnswer, RestInput } from './core/rest/rest.ts';
export type { AlongInput } from './core/survey/along.ts';
export type { LineInput } from './core/survey/line-input.ts';
export { lineZone } from './core/survey/line-zone.ts';
export { planeZone } from './core/survey/plane-zone.ts';
export type { PlateInput } from './core/survey/plate-input.ts';
export { type KitReport, kitReport } from './shop/kit/kit-report.ts';
export { type PartsAnswer, parts } from './shop/parts.ts';
export type { DecodedPhoto, DecodePhoto } from './shop/print/photo.ts';
export type { PhotoReading } from './shop/print/photo-reading.ts';
export { readPhoto } from './shop/print/read-photo.ts';
export { rest } from './shop/rest.ts';
export { type SiteAnswer, site } from './shop/site.ts';
export { steer } from './shop/steer.ts';
export { listSums, type SumAnswer, type SumListed, sumAnswer } from './shop/sums/sum-answer.ts';
export { type AlongAnswer, along, alongSentence } from './shop/survey/along.ts';
export { type LineAnswer, line } from './shop/survey/line.ts';
export { lineSentence } from './shop/survey/line-sentence.ts';
export { type PlateAnswer, plate } from './shop/survey/plate.ts';
export { plateSentence } from './shop/survey/plate-sentence.ts';
