/** What is a roof by its `is:`: neither what is set into one nor what stands on it. */
export const ROOF =
  /^roof\b(?![ -](fan|vent|window|hatch|turbine|drain|gutter|flashing|mounted|top|exhaust|solar|antenna|deck|heat))/i;
