import { celsius, celsiusToFahrenheit, fahrenheitToCelsius, formatTemperature } from '../units/temperature.ts';
import { beaufort } from './beaufort.ts';
import type { Day } from './day.ts';
import { heatIndex } from './heat-index.ts';
import { windChill_C } from './wind-chill.ts';

/** A warning for the screen and the sheet. `source`: who says so. */
export type Caution = Readonly<{
  kind: 'lightning' | 'people' | 'wind' | 'heat' | 'cold';
  text: string;
  source: string;
}>;

/** Goes on every sheet, whatever the weather. */
export const LIGHTNING: Caution = {
  kind: 'lightning',
  text: 'Thunder heard at all is near enough: stop, go indoors or into a hard-topped car, and wait 30 minutes after the last thunder. Lone trees, open shelters, hill tops and baskets are not safe. Defer to local rules and course staff.',
  source: 'US National Weather Service, lightning safety',
};

/** Goes on every sheet: no plan is a reason to throw. */
export const PEOPLE: Caution = {
  kind: 'people',
  text: 'Never throw while anyone could be hit; wait until the way is clear, and shout if a disc flies towards somebody.',
  source: 'Official Rules of Disc Golf, 812 (courtesy) and 802.03 (time runs only when the area is clear)',
};

/** For a hole whose landing cannot be seen from the tee. */
export const BLIND_SHOT: Caution = {
  kind: 'people',
  text: 'You cannot see where this lands: send a spotter to a safe side and wait for the sign, or, alone, walk forward and look first.',
  source: 'common practice, no source',
};

/** For a hole whose throws come near a path, road, playground or another tee. */
export const NEAR_PEOPLE: Caution = {
  kind: 'people',
  text: 'People may pass within reach of this throw: look both ways and wait for them.',
  source: 'Official Rules of Disc Golf, 812 (courtesy)',
};

const REPORTED_THUNDER: Caution = {
  ...LIGHTNING,
  text: `The weather report has a thunderstorm at or near the station: do not start a round. ${LIGHTNING.text}`,
};

/** Everything to be careful about on this day; lightning and people always, the rest when it applies. */
export function dayCautions(day: Day): readonly Caution[] {
  return [
    day.thunder ? REPORTED_THUNDER : LIGHTNING,
    PEOPLE,
    ...windCautions(day),
    ...heatCautions(day),
    ...coldCautions(day),
  ];
}

function windCautions({ wind }: Day): Caution[] {
  const source = 'Beaufort scale, land signs (WMO); the advice is common practice, no source';
  const [mean, gust] = [beaufort(wind.speed_mps), beaufort(wind.gust_mps)];
  if (mean >= 7) {
    return [
      {
        kind: 'wind',
        text: `Beaufort ${mean}: whole trees move and branches may fall. Keep out from under trees, or play another day.`,
        source,
      },
    ];
  }
  if (gust >= 8) {
    return [
      {
        kind: 'wind',
        text: `Gusts reach Beaufort ${gust}: twigs and dead branches break. Do not linger under trees.`,
        source,
      },
    ];
  }
  return [];
}

// Bands of the heat index in °F, as the US National Weather Service prints them, worst first.
const HEAT_BANDS = [
  { from_F: 125, name: 'extreme danger', advice: 'heat stroke is likely with effort: do not play' },
  {
    from_F: 103,
    name: 'danger',
    advice: 'heat cramps and exhaustion are likely, heat stroke possible: play early or late, or not at all',
  },
  {
    from_F: 90,
    name: 'extreme caution',
    advice: 'heat cramps and exhaustion are possible: shade and water at every hole',
  },
  { from_F: 80, name: 'caution', advice: 'effort tires sooner: drink often' },
] as const;

function heatCautions({ temperature_C, relativeHumidity }: Day): Caution[] {
  if (temperature_C === undefined) return [];
  const source = 'US National Weather Service, heat index';
  const temperature = celsiusToFahrenheit(celsius(temperature_C));
  if (relativeHumidity === undefined) {
    if (temperature < HEAT_BANDS[3].from_F) return [];
    return [
      {
        kind: 'heat',
        text: `${formatTemperature(temperature_C, 'C')}, humidity not known: it may feel much hotter. Drink often, keep to the shade.`,
        source,
      },
    ];
  }
  const index = heatIndex(temperature, relativeHumidity);
  const band = HEAT_BANDS.find(({ from_F }) => index >= from_F);
  if (band === undefined) return [];
  const index_C = fahrenheitToCelsius(index);
  const felt = `${formatTemperature(index_C, 'C')} (${formatTemperature(index_C, 'F')})`;
  return [
    { kind: 'heat', text: `Feels like ${felt} in the shade, more in the sun: ${band.name}; ${band.advice}.`, source },
  ];
}

// Thresholds of wind chill from memory (Environment Canada); that of bare cold is our own.
const FROSTBITE_CHILL_C = -28;
const COLD_CHILL_C = -10;
const COLD_C = 5;

function coldCautions({ temperature_C, wind }: Day): Caution[] {
  if (temperature_C === undefined) return [];
  const felt_C = windChill_C(temperature_C, wind.speed_mps) ?? temperature_C;
  const felt = formatTemperature(felt_C, 'C');
  const source = 'wind chill formula and bands from memory, Environment Canada';
  if (felt_C <= FROSTBITE_CHILL_C)
    return [
      { kind: 'cold', text: `Feels like ${felt}: bare skin can freeze within half an hour. Do not play.`, source },
    ];
  if (felt_C <= COLD_CHILL_C)
    return [{ kind: 'cold', text: `Feels like ${felt}: cover hands, ears and face between throws.`, source }];
  if (temperature_C <= COLD_C) {
    return [
      {
        kind: 'cold',
        text: `${formatTemperature(temperature_C, 'C')}: cold fingers let go early or late; warm them before each throw.`,
        source: 'common practice, no source',
      },
    ];
  }
  return [];
}
