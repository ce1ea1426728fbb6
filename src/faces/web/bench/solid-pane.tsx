import { type Pose, poseFromNumbers } from '../../../core/body/displacement.ts';
import { add, axisVector, scale, type Vector } from '../../../core/body/vector.ts';
import type { JobPlan } from '../../../core/ledger/entry.ts';
import type { SteerAnswer } from '../../../core/plan/answer.ts';
import { solidView } from '../../../draw/solid-view.ts';
import { Figure } from '../figure.tsx';
import { useWidth } from '../frame/width.ts';

/** How the slide is wanted: the turns that targets ask for, where they aim; what nothing asks for stays as it sits. */
function wantedPose(plan: Pick<JobPlan, 'features' | 'targets'>, sits: Pose): Pose {
  const turn_urad = plan.features.reduce<Vector>((turn, feature) => {
    const target = plan.targets.find((one) => one.feature === feature.name);
    if (feature.kind !== 'turn' || !target) return turn;
    const axis = axisVector(feature.axis);
    const now = axis[0] * turn[0] + axis[1] * turn[1] + axis[2] * turn[2];
    return add(turn, scale(axis, (target.aim ?? (target.low + target.high) / 2) - now));
  }, sits.turn_urad);
  return { t_um: sits.t_um, turn_urad };
}

/** The slide on its ways as the estimate has it, small, its tilt enlarged and said to be: it explains, nothing is read from it. */
export function SolidPane(props: { readonly plan: JobPlan; readonly steer: SteerAnswer }) {
  const { plan, steer } = props;
  const [ref, width] = useWidth<HTMLDivElement>(360);
  const pose = poseFromNumbers(steer.estimate.pose);
  return (
    <section ref={ref}>
      <h3>How it sits</h3>
      <Figure
        shape={solidView({
          title: `The ${plan.slide.name} on its ways`,
          slide: plan.slide,
          pose,
          wanted: wantedPose(plan, pose),
          places: plan.places,
          width,
        })}
      />
    </section>
  );
}
