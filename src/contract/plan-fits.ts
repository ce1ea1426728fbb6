import type { JobPlan } from '../core/ledger/entry.ts';
import { madeBlockFaults } from './made-block.ts';
import { listed } from './reading-fits.ts';
import type { Issue } from './refusal.ts';

/** What a plan's parts must say of each other: targets name features, pads name materials, names differ. */
export function planFits(plan: JobPlan, before: string): Issue[] {
  const at = (path: string) => (before === '' ? path : `${before}.${path}`);
  const features = plan.features.map((feature) => feature.name);
  const issues: Issue[] = [];
  if (new Set(features).size !== features.length)
    issues.push({ path: at('features'), found: listed(features), expected: 'features with different names' });
  const targets = plan.targets.map((target) => target.feature);
  if (new Set(targets).size !== targets.length)
    issues.push({ path: at('targets'), found: listed(targets), expected: 'one target for a feature' });
  plan.targets.forEach((target, k) => {
    if (!features.includes(target.feature))
      issues.push({
        path: at(`targets[${k}].feature`),
        found: JSON.stringify(target.feature),
        expected: `one of ${listed(features)}`,
      });
  });
  plan.slide.pads.forEach((pad, k) => {
    if (!(pad.material in plan.passes))
      issues.push({
        path: at(`slide.pads[${k}].material`),
        found: JSON.stringify(pad.material),
        expected: `a material of passes (${listed(Object.keys(plan.passes))})`,
      });
  });
  const setups = plan.setups.map((setup) => setup.id);
  if (new Set(setups).size !== setups.length)
    issues.push({ path: at('setups'), found: listed(setups), expected: 'set-ups with different ids' });
  plan.setups.forEach((setup, k) => {
    if (setup.kind === 'sweep' && setup.rides === setup.touches)
      issues.push({
        path: at(`setups[${k}].touches`),
        found: JSON.stringify(setup.touches),
        expected: 'the other side than rides: an indicator that rides what it touches sees nothing',
      });
    if (setup.kind === 'sweep' && setup.from_mm.every((part, i) => part === setup.to_mm[i]))
      issues.push({
        path: at(`setups[${k}].to_mm`),
        found: JSON.stringify(setup.to_mm),
        expected: 'another place than from_mm',
      });
  });
  if (plan.makes)
    for (const { path, found, expected } of madeBlockFaults(plan.makes, plan.slide.free))
      issues.push({
        path: at(
          `makes${path.map((part) => (typeof part === 'number' ? `[${part}]` : `.${part}`)).join('')}`,
        ),
        found: JSON.stringify(found),
        expected,
      });
  return issues;
}
