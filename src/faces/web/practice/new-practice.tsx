import './practice.css';
import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useLocation } from 'wouter';
import {
  type AskedSlip,
  mostSeed,
  type PracticeLevel,
  type PracticeRecord,
  practiceLevels,
} from '../../../core/practice/record.ts';
import { type PracticeMaterial, practiceSlides } from '../../../core/practice/slides.ts';
import { practicePlan } from '../../../shop/practise/practice-plan.ts';
import { slipChoices } from '../../../shop/practise/slip-words.ts';
import { numberedZones } from '../bench/numbered-zones.ts';
import { PartMap } from '../bench/part-map.tsx';
import { GoButton } from '../frame/go.tsx';
import { Wrong } from '../frame/notice.tsx';
import { Segments } from '../frame/segments.tsx';
import { Top } from '../frame/top.tsx';
import { newId } from '../keep/outbox.ts';
import { posted, Refusing } from '../keep/server.ts';

const slides = Object.keys(practiceSlides);
const levelWords: Readonly<Record<PracticeLevel, string>> = {
  easy: 'Half as worn; every indicator climbs when pushed.',
  usual: 'As worn as a machine that is brought in; now and then an indicator counts the other way.',
  hard: 'Worn out; half of the indicators count the other way.',
};

/** Four figures are enough to write on a board and to tell machines apart. */
const anyNumber = (): string => String(1000 + (crypto.getRandomValues(new Uint16Array(1))[0]! % 9000));

/** The machine's number as typed, or why it is none. */
const readNumber = (typed: string): number | undefined => {
  const value = Number(typed.trim());
  return typed.trim() !== '' && Number.isInteger(value) && value >= 0 && value <= mostSeed
    ? value
    : undefined;
};

/** A practice machine: choose its slide, its material, how hard, and what goes wrong on purpose. */
export function NewPracticeScreen() {
  const [slide, setSlide] = useState(slides[0]!);
  const [material, setMaterial] = useState<PracticeMaterial>('liner');
  const [level, setLevel] = useState<PracticeLevel>('usual');
  const [slips, setSlips] = useState<readonly AskedSlip[]>([]);
  const [number, setNumber] = useState(anyNumber);
  const [wrong, setWrong] = useState<string>();
  const [id] = useState(newId);
  const [, go] = useLocation();
  const client = useQueryClient();
  const seed = readNumber(number);
  const record: PracticeRecord = { slide, material, level, seed: seed ?? 0, slips };
  const title = `Practice: ${slide}, ${material}`;

  const make = async () => {
    if (seed === undefined) {
      setWrong(`“${number}” is no machine’s number. Write a whole number, 0 to ${mostSeed}.`);
      return;
    }
    try {
      await posted('/api/practice', { id, at: new Date().toISOString(), title, ...record });
      await client.invalidateQueries({ queryKey: ['jobs'] });
      go(`/job/${encodeURIComponent(id)}`);
    } catch (failure) {
      setWrong(
        failure instanceof Refusing
          ? failure.message
          : 'The shop’s file is out of reach. Nothing was made; try again.',
      );
    }
  };
  const toggle = (slip: AskedSlip) =>
    setSlips(slips.includes(slip) ? slips.filter((one) => one !== slip) : [...slips, slip]);

  return (
    <>
      <Top title="Practise" />
      <main className="page with-foot">
        <div className="pair">
          <div>
            <p className="say">
              A simulated machine to measure, blue, scrape and measure again. Its truth is hidden until you
              ask.
            </p>
            <div className="field">
              <span className="label">Slide</span>
              {/* biome-ignore lint/a11y/useSemanticElements: a group of pressed buttons, not a form's fields */}
              <div className="slips" role="group" aria-label="Slide">
                {slides.map((one) => (
                  <button
                    key={one}
                    type="button"
                    className="second"
                    aria-pressed={slide === one}
                    onClick={() => setSlide(one)}
                  >
                    {one}
                  </button>
                ))}
              </div>
            </div>
            <div className="field">
              <span className="label">Faced with</span>
              <Segments
                label="Faced with"
                choices={[
                  { value: 'liner', words: 'PTFE-bronze liner' },
                  { value: 'iron', words: 'cast iron' },
                ]}
                chosen={material}
                onChoose={setMaterial}
              />
            </div>
            <div className="field">
              <span className="label">How hard</span>
              <Segments
                label="How hard"
                choices={practiceLevels.map((value) => ({ value, words: value }))}
                chosen={level}
                onChoose={setLevel}
              />
              <span className="quiet">{levelWords[level]}</span>
            </div>
            <div className="field">
              <span className="label">What goes wrong on purpose</span>
              {/* biome-ignore lint/a11y/useSemanticElements: as above */}
              <div className="slips" role="group" aria-label="What goes wrong on purpose">
                {slipChoices.map(({ slip, words, small }) => (
                  <button
                    key={slip}
                    type="button"
                    className="second"
                    aria-pressed={slips.includes(slip)}
                    onClick={() => toggle(slip)}
                  >
                    <span>
                      {words}
                      <small>{small}</small>
                    </span>
                  </button>
                ))}
              </div>
              <span className="quiet">
                Nothing chosen, nothing goes wrong. Which round and which place is left to the machine’s
                number.
              </span>
            </div>
            <label className="field">
              <span className="label">Machine’s number</span>
              <input
                value={number}
                inputMode="numeric"
                autoComplete="off"
                aria-invalid={seed === undefined ? true : undefined}
                aria-describedby="number-said"
                onChange={(event) => {
                  setNumber(event.target.value);
                  setWrong(undefined);
                }}
              />
              <span className="quiet" id="number-said">
                The same number and choices are the same machine: for a class, or to try again.
              </span>
            </label>
          </div>
          <div className="beside-map">
            <PartMap
              title={`Underside of the practice slide: ${slide}`}
              plan={practicePlan(record, title)}
              turned="end over end"
              show={numberedZones(practicePlan(record, title).slide)}
            />
          </div>
        </div>
        <footer className="foot">
          {wrong === undefined ? null : <Wrong role="alert">{wrong}</Wrong>}
          <GoButton onPress={() => void make()}>Begin to practise</GoButton>
        </footer>
      </main>
    </>
  );
}
