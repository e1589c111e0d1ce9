import type { CrewLine, SourcedText } from './briefing-document';
import type { BriefingInput, BriefingOfficial } from './briefing-input';

const roles = { chief: 'Crew chief', umpire: 'Umpire' } as const;

/** The crew, chief first, each with the way to reach them that they allow. */
export function crewLines({
  crew,
  showsContacts,
}: Pick<BriefingInput, 'crew' | 'showsContacts'>): CrewLine[] {
  return (['chief', 'umpire'] as const).map((seat) => {
    const member = crew.find((one) => one.seat === seat);
    if (member === undefined) {
      return { seat, role: roles[seat], name: 'not named yet', contact: '', callNumber: null };
    }
    return {
      seat,
      role: roles[seat],
      name: member.name,
      ...(showsContacts ? contactOf(member) : { contact: '', callNumber: null }),
    };
  });
}

/** A minor is reached through the guardian, never directly. */
function contactOf(member: BriefingOfficial): Pick<CrewLine, 'contact' | 'callNumber'> {
  if (member.isMinor) {
    const guardian = [member.guardianName, member.guardianContact]
      .filter((part) => part.trim() !== '')
      .join(', ');
    return {
      contact:
        guardian === ''
          ? 'a minor; no guardian is noted: go through your assignor'
          : `a minor; through the guardian: ${guardian}`,
      callNumber: null,
    };
  }
  if (!member.sharesPhone)
    return { contact: 'does not share a number: go through your assignor', callNumber: null };
  const phone = member.phone.trim();
  return phone === ''
    ? { contact: 'no number noted: go through your assignor', callNumber: null }
    : { contact: phone, callNumber: phone };
}

const safeguarding = 'several safeguarding policies; local rules and law decide';

/** Duty of care on every sheet, and more where one of the crew is a minor. */
export function careNotes({ crew, association }: BriefingInput): SourcedText[] {
  const minors = crew.filter((member) => member.isMinor).map((member) => member.name);
  return [
    ...(minors.length === 0
      ? []
      : [
          {
            text: `${minors.join(' and ')} ${minors.length === 1 ? 'is a minor' : 'are minors'}: no shared changing room, no lift alone with an unrelated adult, messages and talks where others can see and interrupt, and a guardian who knows where and when.`,
            source: safeguarding,
          },
        ]),
    {
      text: `Concussion: recognise and remove. Anyone who may be concussed does not come back today without a medical assessment. In an emergency call ${association.emergencyNumber}.`,
      source: 'Concussion Recognition Tool 6, Br J Sports Med 57(11):689',
    },
    {
      text: 'This sheet gives the usual cautions. Local rules, the venue’s own plan and licensed people decide.',
      source: 'association policy',
    },
  ];
}
