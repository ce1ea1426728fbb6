import { drawing } from './drawing.ts';
import { line } from './line.ts';
import { palette } from './palette.ts';
import { pin } from './pin.ts';
import type { Shape } from './shape.ts';
import { brokenLines, label, textWidth } from './text.ts';

/** A part of the doubt: two sd in the shown unit, and how it is spoken: "± 6 µm". */
export interface DoubtShare {
  readonly name: string;
  readonly doubt: number;
  readonly text: string;
}

export interface DoubtSharesFigure {
  readonly title: string;
  /** Left out: the shares in words. */
  readonly desc?: string;
  readonly width: number;
  readonly shares: readonly DoubtShare[];
  /** What they come to together. */
  readonly together?: DoubtShare;
}

const size = 16;

/** Shares of doubt as pins of that width, one under another, on one scale. */
export function doubtShares(figure: DoubtSharesFigure): Shape {
  const { width, shares, together } = figure;
  const rows = [...shares, ...(together ? [together] : [])];
  const textRoom = Math.max(0, ...rows.map((row) => textWidth(row.text, size))) + 14;
  const nameRoom = Math.min(
    Math.max(0, ...rows.map((row) => textWidth(row.name, size))) + 10,
    width - textRoom - 96,
  );
  const pinRoom = width - textRoom - nameRoom;
  const largest = Math.max(...rows.map((row) => row.doubt), 1e-9);
  const middle = nameRoom + pinRoom / 2;
  let y = 1;
  const drawn = rows.flatMap((row, i): Shape[] => {
    const lines = brokenLines(row.name, size, nameRoom - 6);
    const tall = 24 + lines.length * 18;
    const centre = y + tall / 2;
    const isSum = i === shares.length;
    const first = centre + 5.5 - ((lines.length - 1) * 18) / 2;
    const shapes = [
      line([0, y], [width, y], isSum ? palette.ink : palette.line, isSum ? 1.5 : 1),
      ...lines.map((words, k) =>
        label(0, first + k * 18, words, {
          size,
          weight: isSum ? 640 : 470,
          fill: isSum ? palette.ink : palette.ink2,
        }),
      ),
      pin(
        {
          x: middle,
          half: (row.doubt / largest) * (pinRoom / 2 - 6),
          y: centre,
          height: isSum ? 17 : 13,
          left: nameRoom,
          right: nameRoom + pinRoom,
        },
        isSum ? 'forecast' : 'past',
      ),
      label(width, centre + 5.5, row.text, { size, weight: 660, anchor: 'end' }),
    ];
    y += tall;
    return shapes;
  });
  const desc = figure.desc ?? `${rows.map((row) => `${row.name}: ${row.text}`).join('; ')}.`;
  return drawing({ ...figure, desc, height: y + 1 }, drawn);
}
