import type { GibAsk } from '../contract/gib.ts';
import { angleFound, type DovetailAngle } from '../core/gib/dovetail-angle.ts';
import { type PlayFound, type PlayRead, playFound } from '../core/gib/gib-play.ts';
import { type TaperFound, type TaperMatch, taperFound, taperMatch } from '../core/gib/gib-shape.ts';
import { type KeeperFound, keeperFound } from '../core/gib/keeper.ts';
import { judgeParallel, type RollsFound, rollsFound } from '../core/gib/rolls.ts';
import type { Template } from '../core/ledger/template.ts';
import type { SteerInput } from '../core/observe/round.ts';
import type { Machine } from '../core/order/machine.ts';
import type { Judged } from '../core/prove/verdict.ts';
import type { UnitSystem } from '../core/quantity/unit.ts';
import { gibSteer } from './gib-steer.ts';
import {
  angleSentence,
  keeperSentence,
  playSentence,
  rollsSentence,
  spaceSentence,
  taperSentence,
} from './gib-words.ts';
import { gibWorking } from './gib-working.ts';
import type { Worked } from './worked.ts';

/** What `gib` answers. */
export interface GibAnswer {
  readonly ok: true;
  readonly rolls?: RollsFound & { readonly judged: Judged; readonly sentence: string };
  readonly angle_check?: DovetailAngle & { readonly sentence: string };
  readonly gib?: TaperFound & { readonly sentence: string };
  readonly space?: TaperFound & TaperMatch & { readonly sentence: string };
  readonly play?: PlayFound & { readonly sentence: string };
  readonly keepers: readonly (KeeperFound & { readonly sentence: string })[];
  /** What `steer` is asked about the gib's own face. */
  readonly steer_input?: SteerInput;
  readonly working: readonly Worked[];
}

/**
 * A dovetail, its gib and its keepers: how wide and parallel, how the gib fits, how far it goes in, what goes on or comes off,
 * and the plays put as a question to the planner of the gib's own face.
 * @param system  units of the sentences and the working
 * @throws BadInput  a machine or step that there is not
 */
export function gib(
  ask: GibAsk,
  machines: readonly Machine[],
  templates: readonly Template[],
  system: UnitSystem = 'metric',
): GibAnswer {
  const rolls = ask.rolls && rollsFound(ask.rolls);
  const angle = ask.angle_check && angleFound({ ...ask.angle_check, drawn_deg: ask.angle_deg });
  const own = ask.gib && taperFound(ask.gib);
  const space = ask.space && taperFound(ask.space);
  const length_mm = ask.gib ? ask.gib.stations_mm.at(-1)! - ask.gib.stations_mm[0]! : 0;
  const match = own && space && taperMatch(own, space, length_mm);
  const read: PlayRead | undefined = ask.play && {
    ...ask.play,
    angle_deg: ask.angle_deg,
    taper: own?.taper ?? ask.taper!,
  };
  const play = read && playFound(read);
  const keepers = ask.keepers.map((one) => keeperFound(one));
  const parts = { ask, rolls, angle, own, space, match, read, play, keepers };
  return {
    ok: true,
    ...(rolls
      ? {
          rolls: {
            ...rolls,
            judged: judgeParallel(rolls, ask.rolls!.most_um),
            sentence: rollsSentence(rolls, ask.rolls!, system),
          },
        }
      : {}),
    ...(angle ? { angle_check: { ...angle, sentence: angleSentence(angle, system) } } : {}),
    ...(own ? { gib: { ...own, sentence: taperSentence(own, system) } } : {}),
    ...(space && match
      ? { space: { ...space, ...match, sentence: spaceSentence(space, match, system) } }
      : {}),
    ...(play ? { play: { ...play, sentence: playSentence(play, read!, system) } } : {}),
    keepers: keepers.map((one) => ({ ...one, sentence: keeperSentence(one, system) })),
    ...(ask.scrape && read && play
      ? { steer_input: gibSteer(ask.scrape, read, play, machines, templates) }
      : {}),
    working: gibWorking(parts, system),
  };
}
