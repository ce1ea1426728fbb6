// Rounds on the bench of a step, until the tool says stop.
import { workingLines } from './told.mjs';

const mostRounds = 25;

/** The passes asked for, as they are made one after the other: each a deed of its own. */
function passDeeds(round, zones, spot) {
  const pads = [...new Set(zones.map((zone) => zone.pad))];
  const most = Math.max(...zones.map((zone) => zone.passes_now), 0);
  return [
    { kind: 'part turned over', round, how: 'end over end' },
    ...Array.from({ length: most }, (_, k) => ({
      kind: 'pass made',
      round,
      pass: k + 1,
      ...(spot ? { spot } : {}),
      zones: Object.fromEntries(
        pads.map((pad) => [
          pad,
          zones.filter((zone) => zone.pad === pad).map((zone) => (zone.passes_now > k ? 1 : 0)),
        ]),
      ),
    })),
    { kind: 'round closed', round },
  ];
}

/** What a round came to, in one line; the chance is that the feature lies in its band. */
function roundText(round, { estimate, plan: next }, unitOf) {
  const features = estimate.features.map(
    (one) =>
      `${one.name} ${one.value.toFixed(1)} ± ${(2 * one.sd).toFixed(1)} ${unitOf(one.name)} (${(100 * one.chance_in_band).toFixed(0)} chances in 100)`,
  );
  const share = next.bearing.share === undefined ? '' : `, ${(100 * next.bearing.share).toFixed(0)} % blue`;
  const passes = next.zones.reduce((all, zone) => all + zone.passes_now, 0);
  const what =
    next.action === 'stop'
      ? 'stop'
      : `${next.action}, ${passes} ${passes === 1 ? 'pass' : 'passes'} on zones`;
  return `round ${round}: ${features.join('; ')}${share}: ${what}`;
}

/** Unit of a feature of the plan: a turn is a slope, a shift a length. */
const unitsOf = (plan) => (name) =>
  plan.features.find((one) => one.name === name).kind === 'turn' ? 'µrad' : 'µm';

/**
 * Rounds of a job until the tool says stop.
 * @param measured  the deeds of a round's measuring and printing
 * @param scraped   hears of the passes made on each zone; left out where the metal follows the ledger
 * @returns         rounds, passes made on zones, and the answer that said stop
 */
export async function untilStop({ shop, id, plan, tell, measured, scraped }) {
  let passes = 0;
  for (let round = 1; round <= mostRounds; round++) {
    const { answer, working } = await shop.write(id, await measured(round), '--show', '--working');
    if (!answer.steer.ok) throw new Error(`${id}, round ${round}: ${answer.steer.text}`);
    tell(roundText(round, answer.steer, unitsOf(plan)));
    for (const line of workingLines(working)) tell(line);
    const { plan: next, alarm } = answer.steer;
    if (alarm)
      tell(
        `${alarm.feature} does not add up (chance ${alarm.chance.toPrecision(1)}); likeliest: ${alarm.causes[0]?.cause.kind ?? 'nothing known'}`,
      );
    const { action, zones } = next;
    if (action === 'stop') {
      await shop.write(id, [{ kind: 'stop signed', round }]);
      return { rounds: round, passes, stop: answer.steer };
    }
    const spot = action === 'spot';
    const now = zones.map((zone) => zone.passes_now);
    passes += now.reduce((all, one) => all + one, 0);
    await shop.write(id, passDeeds(round, zones, spot));
    scraped?.(now, spot);
  }
  throw new Error(`${id}: not done after ${mostRounds} rounds`);
}

/**
 * The bench of a step from its opening to the tool's stop. `stands_um`: the part is packed so much too high.
 * @returns its job, rounds, passes made on zones, and how it is read again in its last round
 */
export async function bench({ shop, machine, job, tell, its }, step, own) {
  const { job: id } = await shop.ask('job', 'bench', job, step.id, '--id', `${job}-${step.id}`);
  const { plan } = await shop.ask('job', 'show', id);
  for (const limit of plan.sink ?? []) tell(`may sink ${limit.most_um.toFixed(0)} µm: ${limit.name}`);
  for (const pad of plan.slide.pads)
    if (pad.stock_um > 0) tell(`may lose ${pad.stock_um.toFixed(0)} µm: ${pad.name}`);
  const part = machine.bench(plan, own, its.stands_um?.[step.id]);
  const { rounds, passes } = await untilStop({
    shop,
    id,
    plan,
    tell,
    measured: (round) => part.round(round),
    scraped: (now, spot) => part.scrape(now, spot),
  });
  return { id, rounds, passes, again: () => shop.write(id, part.read(rounds)) };
}
