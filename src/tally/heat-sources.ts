/**
 * What warms the rooms, by its `is:`. Heat that goes into water or laundry warms none, and neither does a part that
 * only belongs to it.
 */
export const HEATS_ROOMS =
  /^(?!thermostat|humidifier|(air |furnace )?filter\b)(?!.*\b(water heater|pool|spa|dryer)\b).*\b(furnace|boiler|heat pump(?! water)|wall heater|space heater|baseboard|radiators?|mini.?split|radiant (floor|ceiling)|(wood|pellet) stove)/i;
