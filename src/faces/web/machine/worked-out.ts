import { useQuery } from '@tanstack/react-query';
import { placeWords } from '../../../shop/order/machine-draft.ts';
import { outbox } from '../keep/jobs.ts';
import { posted, Refusing } from '../keep/server.ts';
import { useSettings } from '../keep/settings.ts';

/** What the shop works out from a sheet as it stands; what it answered before stands until then. */
export function useWorkedOut<T>(place: string, body: unknown, ready = true) {
  const { units } = useSettings();
  const address = `${place}?units=${units}`;
  const { data, error } = useQuery({
    queryKey: ['worked out', address, body],
    queryFn: async ({ signal }) => {
      await outbox.deliver();
      return posted<T>(address, body, signal);
    },
    placeholderData: (before) => before,
    staleTime: Number.POSITIVE_INFINITY,
    retry: false,
    enabled: ready,
  });
  return { data, wrong: error && ready ? whyNot(error) : undefined };
}

/** Why nothing could be worked out, a line for each reason. */
function whyNot(failure: Error): readonly string[] {
  if (!(failure instanceof Refusing))
    return ['The shop is out of reach. What you typed stays here; it is asked again when you go on.'];
  const issues = failure.refusal.issues ?? [];
  if (issues.length === 0) return [failure.message];
  return issues.map(
    ({ path, found, expected }) => `${placeWords(undefined, path)}: ${found}; expected ${expected}`,
  );
}
