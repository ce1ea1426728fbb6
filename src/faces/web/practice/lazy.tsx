import { type ComponentProps, lazy, Suspense } from 'react';

/* Practice is fetched when a practice machine is on the bench: whoever scrapes metal does not carry it. */
const atMeasure = () => import('./at-measure.tsx');
const LazyPushShown = lazy(async () => ({ default: (await atMeasure()).PushShown }));
const LazyReadButton = lazy(async () => ({ default: (await atMeasure()).ReadButton }));
const LazyReadAll = lazy(async () => ({ default: (await atMeasure()).ReadAll }));
const LazyBlueAndPrint = lazy(async () => ({
  default: (await import('./blue-and-print.tsx')).BlueAndPrint,
}));
const LazyTruth = lazy(async () => ({ default: (await import('./truth.tsx')).Truth }));

export const PushShown = (props: ComponentProps<typeof LazyPushShown>) => (
  <Suspense fallback={null}>
    <LazyPushShown {...props} />
  </Suspense>
);
export const ReadButton = (props: ComponentProps<typeof LazyReadButton>) => (
  <Suspense fallback={null}>
    <LazyReadButton {...props} />
  </Suspense>
);
export const ReadAll = (props: ComponentProps<typeof LazyReadAll>) => (
  <Suspense fallback={null}>
    <LazyReadAll {...props} />
  </Suspense>
);
export const BlueAndPrint = (props: ComponentProps<typeof LazyBlueAndPrint>) => (
  <Suspense fallback={null}>
    <LazyBlueAndPrint {...props} />
  </Suspense>
);
export const Truth = (props: ComponentProps<typeof LazyTruth>) => (
  <Suspense fallback={null}>
    <LazyTruth {...props} />
  </Suspense>
);
