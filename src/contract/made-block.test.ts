import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { machineInput } from './machine.ts';
import { templateInput } from './template.ts';

const file = (path: string) => JSON.parse(readFileSync(`machines/${path}.json`, 'utf8'));
const refused = (change: (makes: Record<string, unknown>) => unknown) => {
  const template = file('dovetail-two-flats');
  return () => templateInput({ ...template, makes: change(template.makes) });
};

describe('what a machine makes, as its file says it', () => {
  it('names what does not fit: no slide, a slide along another way, a face twice, an axis twice, a key not known', () => {
    const carriages = file('dovetail-two-flats').makes.carriages;
    expect(
      refused((makes) => ({
        ...makes,
        carriages: carriages.map(({ is_slide: _, ...one }: { is_slide?: boolean }) => one),
      })),
    ).toThrow('makes.carriages: "none with \\"is_slide\\""; expected one carriage with "is_slide", along x');
    expect(
      refused((makes) => ({ ...makes, carriages: carriages.map((one: object) => ({ ...one, along: 'x' })) })),
    ).toThrow('makes.carriages[1].along: "x"; expected an axis that no other carriage travels along');
    expect(
      refused((makes) => ({
        ...makes,
        faces: [
          { face: '+z', name: 'top' },
          { face: '+z', name: 'top again' },
        ],
      })),
    ).toThrow('makes.faces[1].face: "+z"; expected a face that is not named already');
    expect(refused((makes) => ({ ...makes, colour: 1 }))).toThrow('makes.colour');
    expect(refused((makes) => ({ ...makes, size_mm: ['breadth', 1, 1] }))).toThrow('breadth');
  });

  it('a whole machine may only take it from a template that has it', () => {
    const ids = [
      'double-v',
      'dovetail-two-flats',
      'four-pad-base',
      'knee-on-column',
      'lathe-saddle',
      'taper-gib',
    ];
    const templates = ids.map((id) => templateInput(file(id)));
    const machine = file('whole/surface-grinder');
    expect(() => machineInput(machine, templates)).not.toThrow();
    const slides = machine.slides.map((slide: { id: string }) =>
      slide.id === 'saddle-on-base' ? { ...slide, makes: 'as the template' } : slide,
    );
    expect(() => machineInput({ ...machine, slides }, templates)).toThrow(
      'what it makes: lathe-saddle says nothing of it',
    );
  });
});
