import { dot, subtract, unit, type Vector } from '../../core/body/vector.ts';
import type { Setup, SweepSetup } from '../../core/ledger/setup.ts';
import { drawing } from '../drawing.ts';
import type { Spot } from '../line.ts';
import { palette } from '../palette.ts';
import type { Shape } from '../shape.ts';
import { label, textWidth } from '../text.ts';
import { fitted, slideBounds, slideOnWays } from './backdrop.ts';
import { placeTexts, type SetupFigure, setupScale } from './figure.ts';
import { heightGauge } from './height-gauge.ts';
import { levelOnSlide } from './level.ts';
import { disc, ghost, indicator, inIsPlus, quarter, rider, step, touchedBody, travelArrow } from './parts.ts';
import { onSheet, unitSpot, type View, viewFrom, viewShowing } from './view.ts';

/** Any set-up from its data alone: where the plunger points, where the sweep runs, what rides and what is touched. */
export function genericSetup(figure: SetupFigure<Setup>): Shape {
  const { setup } = figure;
  switch (setup.kind) {
    case 'sweep':
      return sweepAnywhere({ ...figure, setup });
    case 'level':
      return levelOnSlide({ ...figure, setup });
    case 'height':
      return heightGauge({ ...figure, setup });
  }
}

/** A sweep in the view that shows both its travel and its plunger. */
function sweepAnywhere(figure: SetupFigure<SweepSetup>): Shape {
  const { setup, slide, places, width } = figure;
  const plungerInSlide = unit(setup.plunger);
  const run: Vector = subtract(setup.to_mm, setup.from_mm);
  const view = viewFrom(viewShowing(slide, plungerInSlide, unit(run)), slide, places);
  const { by, text } = setupScale(width);
  const plunger = unitSpot(onSheet(view, plungerInSlide));
  const reach = { tip: 38 * by, rider: 76 * by, arrow: 112 * by, words: 20 * by };
  const deep = 16 * by;
  const isUpright = Math.abs(plunger[1]) > Math.abs(plunger[0]);
  const { box, bounds, height } = room(figure, view, plunger, {
    ...reach,
    deep,
    text,
    edge: 50 * by,
    most: Math.round((isUpright ? 330 : 300) * by),
  });
  const { spot } = fitted(bounds, box);
  const from = spot(dot(view.right, setup.from_mm), dot(view.up, setup.from_mm));
  const to = spot(dot(view.right, setup.to_mm), dot(view.up, setup.to_mm));
  const along = unitSpot([to[0] - from[0], to[1] - from[1]]);
  const over = 24 * by;
  const start = step(from, along, -over);
  const end = step(to, along, over);
  const riderSize = { wide: (isUpright ? 44 : 36) * by, tall: (isUpright ? 30 : 44) * by };
  const ride = step(from, plunger, -reach.rider);
  const rideEnd = step(to, plunger, -reach.rider);
  const arrowFrom = step(from, plunger, -reach.arrow);
  const arrowTo = step(to, plunger, -reach.arrow);
  return drawing(
    {
      title: `${setup.name}: ${view.seen}`,
      desc: `Rides ${setup.rides_words} Touches ${setup.touches_words} Plus: ${setup.plus_words}`,
      width,
      height,
    },
    slideOnWays(slide, view.name, spot, [4, width - 4]),
    touchedBody(
      [start, end, step(end, plunger, deep), step(start, plunger, deep)],
      [step(start, plunger, 1), step(end, plunger, 1)],
    ),
    ghost(rideEnd[0], rideEnd[1], riderSize.wide, riderSize.tall),
    rider(ride[0], ride[1], riderSize.wide, riderSize.tall),
    label(ride[0], ride[1] + text * 0.35, riderSize.wide > textWidth('rides', text) ? 'rides' : '', {
      size: text,
      weight: 640,
      fill: palette.paper,
      anchor: 'middle',
    }),
    indicator(from, plunger, reach.tip, 14 * by, 12 * by),
    plusArrow(from, plunger, along, text, by),
    travelArrow(arrowFrom, arrowTo),
    ends(figure, arrowFrom, arrowTo, plunger, text, width),
    disc(step(step(ride, along, -riderSize.wide / 2 - 14 * by), plunger, 0), 1, 9 * by),
    disc(step(step(end, plunger, deep / 2), along, 14 * by), 2, 9 * by),
    edgeWords(view, width, height, text),
  );
}

/** The box the slide and the sweep are fitted in: on the side the rider is, the rider, the arrow and its words must fit too. */
function room(
  figure: SetupFigure<SweepSetup>,
  view: View,
  plunger: Spot,
  size: { arrow: number; words: number; deep: number; text: number; edge: number; most: number },
) {
  const { setup, slide, width } = figure;
  const slideAt = slideBounds(slide, view.name);
  const rights = [setup.from_mm, setup.to_mm].map((p) => dot(view.right, p));
  const ups = [setup.from_mm, setup.to_mm].map((p) => dot(view.up, p));
  const bounds = {
    left: Math.min(slideAt.left, ...rights),
    right: Math.max(slideAt.right, ...rights),
    low: Math.min(slideAt.low, ...ups),
    high: Math.max(slideAt.high, ...ups),
  };
  const back = size.arrow + size.words;
  const { edge } = size;
  const left = edge + (plunger[0] > 0.5 ? back : 0);
  const right = edge + (plunger[0] < -0.5 ? back : 0);
  const top = size.text + 14 + (plunger[1] > 0.5 ? back : size.deep);
  const isLevel = Math.abs(plunger[0]) > Math.abs(plunger[1]);
  const bottom = size.text + 14 + (plunger[1] < -0.5 ? back : size.deep) + (isLevel ? size.edge * 0.5 : 0);
  const perMm = (width - left - right) / (bounds.right - bounds.left || 1);
  const height = Math.min(Math.ceil((bounds.high - bounds.low) * perMm) + top + bottom, size.most);
  return {
    bounds,
    height,
    box: { x: left, y: top, width: width - left - right, height: height - top - bottom },
  };
}

function plusArrow(from: Spot, plunger: Spot, along: Spot, text: number, by: number): Shape[] {
  // It stands beside the plunger, ahead of it along the sweep.
  const aside = along[0] || along[1] ? along : quarter(plunger);
  const isAcross = Math.abs(plunger[0]) >= Math.abs(plunger[1]);
  const beside = step(step(from, aside, (isAcross ? 30 : 24) * by), plunger, -10);
  return inIsPlus(beside, plunger, text, 34 * by, aside[0] < 0 ? -1 : 1);
}

function ends(
  figure: SetupFigure<SweepSetup>,
  from: Spot,
  to: Spot,
  plunger: Spot,
  text: number,
  width: number,
): Shape[] {
  const { first, last } = placeTexts(figure);
  const isUpright = Math.abs(plunger[1]) > Math.abs(plunger[0]);
  const put = (words: string, at: Spot): Shape => {
    const wide = textWidth(words, text);
    const spot = step(at, plunger, isUpright ? -(plunger[1] > 0 ? 9 : text + 6) : -12);
    const x = isUpright ? at[0] - wide / 2 : plunger[0] > 0 ? spot[0] - wide : spot[0];
    return label(Math.min(Math.max(x, 0), width - wide), spot[1] + (isUpright ? 0 : 5), words, {
      size: text,
      weight: 640,
    });
  };
  return [put(first, from), put(last, to)];
}

function edgeWords(view: View, width: number, height: number, text: number): Shape[] {
  const quiet = { size: text, weight: 480, fill: palette.ink2 };
  const isAbove = view.name === 'above';
  return [
    label(0, text, isAbove ? view.topWords : view.seen, quiet),
    ...(isAbove ? [label(width, text, view.seen, { ...quiet, anchor: 'end' as const })] : []),
    label(0, height - 5, view.leftWords, quiet),
    ...(isAbove && textWidth(view.leftWords + view.bottomWords + view.rightWords, text) + 40 < width
      ? [label(width / 2, height - 5, view.bottomWords, { ...quiet, anchor: 'middle' as const })]
      : []),
    label(width, height - 5, view.rightWords, { ...quiet, anchor: 'end' }),
  ];
}
