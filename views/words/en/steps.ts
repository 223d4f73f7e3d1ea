/** What to do at each step of a weighing, and what spoils it. Common practice of the trade. */
export const steps = {
  dry: {
    title: "Weigh dry",
    does: "Lay the clean, dry piece on the pan and take the reading.",
    minds: "Dry comes first: a film of water adds tens of milligrams.",
  },
  immersed: {
    title: "Weigh immersed",
    does: "Zero with the empty hanger in the water at its mark. Hang the piece, brush off bubbles, take the reading.",
    minds: "Fully covered, touching neither wall nor bottom, at the same depth as at the zero.",
  },
  rise: {
    title: "Take the rise",
    does: "Beaker on the pan, empty hanger in the water at its mark, zero. Hang the piece from the stand, take the rise.",
    minds:
      "The stand must not touch the balance; the piece touches neither wall nor bottom and is fully covered.",
  },
  "flask-full": {
    title: "Weigh the full flask",
    does: "Fill the flask to the mark with water alone, wipe it dry, take the reading.",
    minds: "The same water and temperature as with the piece in it; no air under the stopper.",
  },
  "flask-with-piece": {
    title: "Weigh flask and piece",
    does: "Put the piece into the flask, drive out the air, top up to the mark, wipe it dry, take the reading.",
    minds: "Tap and swirl until no bubble rises.",
  },
  water: {
    title: "Water temperature",
    does: "Read the thermometer in the water.",
    minds: "In the water, not on the wall: one degree is 0.02 % of the density at 20 °C.",
  },
  record: {
    title: "Write the record",
    does: "Read the finding, take more immersed readings if it asks for them, then write the record.",
    minds:
      "Lift the piece out and hang it again between repeats; a second look at the same display is no repeat.",
  },
};
