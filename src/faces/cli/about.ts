/** Every verb with what it is for, in the order that --help lists them. Kept apart from the verbs, so that --help loads none. */
export const about = {
  steer: 'how far out and how sure, where to scrape and how many passes, or stop',
  rest: 'how a slide sits on what it touches, and how much of it bears',
  site: 'where along a worn bed to print, and what each place costs in parts',
  parts: 'what parts a machine will make, and how long its features stay in their bands',
  line: 'straightness of a way from level or autocollimator steps, or from heights',
  plate: 'flatness of a surface from heights, a grid of angles or eight lines',
  practise: 'the tool against simulated machines whose truth is hidden from it',
  job: 'the jobs kept in the workshop',
  print: 'where a blued print bears, read from a photo',
  card: 'the corner card: laid beside a print, it gives the photo its scale; and the bench card to hang up',
  chart: 'the acceptance chart: every test with its limit, as found, now, its doubt and what is proven',
  sums: 'the sums of the shop: dovetails over rolls, tapers, sag, warmth, reversals',
  kit: 'whether your instruments and references can prove a target, what limits them, what betters it',
  order:
    'the order of work of a whole rebuild: what is ready, what waits, what must be proven again, and why',
  heights: 'what each cut and liner does to every height, and the liner that brings a height back',
  axis: 'spindle or tailstock from a test bar turned half round, and which of its pads to scrape',
  gib: 'a dovetail over rolls, its gib and keepers: how far to push it in, shim or cut again, where to scrape',
  serve: 'show the workshop as a page, on this machine only unless --share is given',
  move: 'carries the whole workshop to a PostgreSQL database or to a file, and checks what arrived',
  backup: 'a checked copy of the whole workshop and its photos, made while it is used',
  restore: 'brings a workshop back from a backup or a whole-workshop archive, and checks what arrived',
  workshop: 'the whole workshop: one open file, and a check',
} as const;

/** The name of a verb. */
export type VerbName = keyof typeof about;
