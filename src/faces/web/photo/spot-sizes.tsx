import type { ShownReading } from '../../../shop/print/photo-reading.ts';

/** Sizes of the spots and how they spread, as figures: part of the working. */
export const SpotSizes = ({ reading }: { readonly reading: ShownReading }) => {
  const { area_percentiles_mm2: sizes, evenness, largest_share, net_area_mm2, spots } = reading;
  const [least, , middle, , most] = sizes;
  return (
    <>
      {middle === undefined ? null : (
        <div>
          <dt>Size of a spot</dt>
          <dd>
            {middle.toFixed(1)} mm² in the middle; eight in ten from {least!.toFixed(1)} to {most!.toFixed(1)}{' '}
            mm²
          </dd>
        </div>
      )}
      <div>
        <dt>Spots counted</dt>
        <dd>
          {spots.length} of 0.5 mm² and more, on {Math.round(net_area_mm2)} mm²; the largest holds{' '}
          {Math.round(100 * largest_share)} % of all that bears
        </dd>
      </div>
      {evenness.dispersion === undefined ? null : (
        <div>
          <dt>Spread of the counts</dt>
          <dd>variance {evenness.dispersion.toFixed(2)} times the mean; 1 is chance, less is more even</dd>
        </div>
      )}
      {evenness.bearing_cv === undefined ? null : (
        <div>
          <dt>Bearing from square to square</dt>
          <dd>± {Math.round(200 * evenness.bearing_cv)} % of its mean, two sd</dd>
        </div>
      )}
    </>
  );
};
