import { useQuery } from '@tanstack/react-query';
import { type WorkshopTold, workshopCares, workshopRows } from '../../../shop/keeping/workshop-words.ts';
import { clock, dayMonth } from '../frame/kept.tsx';
import { Top } from '../frame/top.tsx';
import { fetched } from '../keep/server.ts';
import './workshop.css';
import { NotHere } from '../frame/not-here.tsx';
import { Wrong } from '../frame/notice.tsx';

const moment = (iso: string): string => `${dayMonth(iso)} ${clock(iso)}`;

/** Where everything is kept, how much it is, and when it was last backed up. */
export function WorkshopScreen() {
  const { data, error } = useQuery({
    queryKey: ['workshop'],
    queryFn: () => fetched<WorkshopTold>('/api/workshop'),
    staleTime: 0,
  });
  return (
    <>
      <Top title="The workshop’s file" />
      <main className="page narrow">
        {data ? (
          <>
            <p className="say">Where everything is kept, and when it was last backed up.</p>
            {workshopCares(data, moment).map((care) => (
              <Wrong key={care} role="alert">
                {care}
              </Wrong>
            ))}
            <dl className="workshop-facts">
              {workshopRows(data, moment).map(({ label, words }) => (
                <div key={label}>
                  <dt>{label}</dt>
                  <dd>{words}</dd>
                </div>
              ))}
            </dl>
          </>
        ) : (
          <NotHere what="where it keeps things" failure={error} />
        )}
      </main>
    </>
  );
}
