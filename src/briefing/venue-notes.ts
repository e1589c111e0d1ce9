import type { BriefingInput } from './briefing-input';
import type { VenueNote } from './briefing-document';

/** What is known of the building; what nobody has entered says what to do instead. */
export function venueNotes(venue: BriefingInput['venue']): VenueNote[] {
  return [
    note('Entrance', venue.entrance, 'Not noted. Ask the home team beforehand which door is open.'),
    note('Parking', venue.parking, 'Not noted. Allow five more minutes.'),
    note('Changing room', venue.changingRoom, 'Not noted. Ask the home team on arrival for one of your own.'),
    note('Table side', venue.tableSide, 'Not noted. Look when you arrive, and agree on sides then.'),
    note('Hazards', venue.hazards, 'None noted. Walk the floor and its edges before the warm-up.'),
  ];
}

/** What must be at hand when somebody is hurt (NATA position statement, J Athl Train 52(4):384, 2017). */
export function safetyNotes(venue: BriefingInput['venue'], emergencyNumber: string): VenueNote[] {
  const address = [venue.name, venue.address, venue.town].filter((part) => part.trim() !== '').join(', ');
  return [
    note('Emergency number', emergencyNumber, 'Not noted. Ask the home team before the game.'),
    note(
      'Address to say',
      venue.emergencyAddress,
      `Not noted. Say: ${address}. Ask the home team for the exact entrance.`,
    ),
    note(
      'Defibrillator',
      venue.defibrillator,
      'Not noted. Ask on arrival where the nearest one is, and go and see it.',
    ),
    note('First aid', venue.firstAid, 'Not noted. Ask before tip-off who the first aider is.'),
    note('Nearest hospital', venue.nearestHospital, 'Not noted. The emergency service decides where to go.'),
  ];
}

function note(label: string, text: string, remedy: string): VenueNote {
  const isMissing = text.trim() === '';
  return { label, text: isMissing ? remedy : text.trim(), isMissing };
}
