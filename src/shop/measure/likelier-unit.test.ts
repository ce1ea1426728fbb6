import { describe, expect, it } from 'vitest';
import { likelierDeviation, likelierSlope } from './likelier-unit.ts';

describe('readings that can hardly be in their unit', () => {
  it('a sweep read in mm and typed where µm are asked is asked about: as it stands it would be flat', () => {
    const asked = likelierDeviation(['0', '-0.002', '-0.004', '-0.010', '-0.025'], 'um');
    expect(asked?.likelier).toBe('mm');
    expect(asked?.question).toBe(
      'Taken in µm, all these together make less than 1 µm, finer than an indicator shows. Were they read in mm?',
    );
    expect([asked?.yes, asked?.no]).toEqual(['They are mm', 'They are µm']);
  });

  it('µm typed where mm are asked, and thou where inches', () => {
    expect(likelierDeviation(['0', '-4', '-25'], 'mm')?.likelier).toBe('um');
    expect(likelierDeviation(['0', '-.4', '-1.5'], 'in')?.likelier).toBe('thou');
  });

  it('nothing is asked of readings that fit, of a dial with its pointer far round, of noughts, or of what bears its own unit', () => {
    expect(likelierDeviation(['0', '-2.5', '-25'], 'um')).toBeUndefined();
    expect(likelierDeviation(['1.250', '1.248', '1.225'], 'mm')).toBeUndefined();
    expect(likelierDeviation(['0', '0', '0'], 'um')).toBeUndefined();
    expect(likelierDeviation(['0', '0.5 um', '0.2 um'], 'um')).toBeUndefined();
    expect(likelierDeviation(['0', 'rubbish', '0.2'], 'um')).toBeUndefined();
    expect(likelierDeviation(['0', '-.0005', '-.001'], 'thou')).toBeUndefined();
  });

  it('a level of 0.02 typed where µm/m are asked is 0.02 mm/m; 20 where mm/m are asked is 20 µm/m', () => {
    expect(likelierSlope('0.02', 'um/m')).toMatchObject({ likelier: 'mm/m', yes: 'It is mm/m' });
    expect(likelierSlope('20', 'mm/m')?.likelier).toBe('um/m');
    expect(likelierSlope('-12', 'um/m')).toBeUndefined();
    expect(likelierSlope('0.02 mm/m', 'um/m')).toBeUndefined();
    expect(likelierSlope('0', 'um/m')).toBeUndefined();
  });

  it('a height by itself', () => {
    expect(likelierDeviation(['0.012'], 'um')?.yes).toBe('It is mm');
    expect(likelierDeviation(['12'], 'um')).toBeUndefined();
  });
});
