/**
 * Share of its area that a scraped face shows blue where it bears all over: between the spots metal stays bare. Common
 * practice: 30 to 50 % at the finish, no published figure; rendered prints of well bearing faces show 25 to 35 %.
 */
export const fullCover = 0.38;

/**
 * How far a zone bears, 0 to 1, from the share of its area that a photo shows blue: the plan counts zones, a photo counts
 * metal. What is tapped by hand is said of the zone already.
 */
export const bearsFromBlue = (blue: number): number => Math.min(1, blue / fullCover);
