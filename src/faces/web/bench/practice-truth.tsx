import { practiceOf } from '../../../shop/practise/practice-of.ts';
import type { OpenJob } from '../keep/jobs.ts';
import { Truth } from '../practice/lazy.tsx';

/** On a practice machine's bench, its truth: hidden until it is asked for. Nothing on a real part's. */
export const PracticeTruth = ({ open }: { readonly open: OpenJob }) =>
  practiceOf(open.job) ? <Truth open={open} /> : null;
