import { Top } from '../frame/top.tsx';

/** Help on signs: three things decide a sign, and the push test settles the instrument's own. */
export const SignsScreen = () => (
  <>
    <Top title="How signs work" />
    <main className="page narrow">
      <p className="say">
        A sign is never looked up. It follows from what you see at the machine: what rides, what is touched,
        which way the plunger points.
      </p>
      <section>
        <h2>An indicator</h2>
        <ol className="rows">
          <li className="rule">
            <b aria-hidden="true">1</b>
            <span>
              <b>What its body rides on.</b> The part being scraped, or the bed and anything set true to it.
            </span>
          </li>
          <li className="rule">
            <b aria-hidden="true">2</b>
            <span>
              <b>What its plunger touches.</b> The other one of the two.
            </span>
          </li>
          <li className="rule">
            <b aria-hidden="true">3</b>
            <span>
              <b>Which way the plunger points,</b> from the body to the touched face. Plunger in is plus.
            </span>
          </li>
        </ol>
        <p className="after">
          Swap 1 and 2, or turn 3 round, and every sign turns. The card of each set-up draws all three.
        </p>
      </section>
      <section>
        <h2>The push test</h2>
        <p>
          Push the plunger in with a finger. If the number climbs, the instrument counts as the card says. If
          it falls, say so: the readings stay as you typed them, and every sign is turned in the sum.
        </p>
      </section>
      <section>
        <h2>The square, worked</h2>
        <p>
          The indicator rides the cross slide. Its plunger points at the headstock and touches the tailstock
          face of a square set true to the bed. Wind in. The number <b>climbs</b>: the tool goes toward the
          headstock, a face comes out <b>concave</b>, plus. It <b>falls</b>: <b>convex</b>, minus.
        </p>
      </section>
      <section>
        <h2>A level</h2>
        <p>
          A level reads plus when the end the card names is high. Laid across, plus is back high. Laid along,
          the card says which end.
        </p>
      </section>
      <section>
        <h2>The square’s own error</h2>
        <p>
          Sweep, turn the square over with its stock pointing the same way, and sweep again. The part reads
          the same both times; the square’s error turns its sign. Half the sum is the part’s, half the
          difference the square’s.
        </p>
      </section>
      <section>
        <h2>On paper</h2>
        <p>
          The bench card has these signs, the push test, the names of the blue and the cautions on one sheet
          to hang up.
        </p>
        <p>
          <a className="third" href="/bench-card-a4.pdf" download>
            Bench card, A4
          </a>
        </p>
        <p>
          <a className="third" href="/bench-card-letter.pdf" download>
            Bench card, letter
          </a>
        </p>
      </section>
    </main>
  </>
);
