// What is typed and said
import { readDeviation, readLength, readSlope, sayDeviation, saySlope } from 'waywright';

// readDeviation: a reading as it is spoken, in µm; bare numbers are in the column's unit
for (const typed of ['+7', 'half thou', '5 tenths', '12um'])
  console.log(typed, readDeviation(typed, 'um').um);

// readSlope: a slope, in µrad (1 µrad is 1 µm in a metre)
for (const typed of ['0.02 mm/m', '6 tenths in 12 in', '1 arcsec'])
  console.log(typed, readSlope(typed, 'mm/m').urad.toFixed(3));

// readLength: a length, in mm
console.log(readLength('13 3/8 in', 'mm').mm);

// sayDeviation, saySlope: said again, with sign, unit and doubt, in either system
console.log(sayDeviation(-12.7, 'inch', { sd: 1.3 }).text);
console.log(saySlope(43.3, 'metric', { sd: 8 }).text);
