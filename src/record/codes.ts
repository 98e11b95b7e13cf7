import type { Code, CodeList } from './field.js';

const vesselTerms = '33 CFR 174.19 (a)';

/** A code list from pairs of code and meaning. */
function list(name: string, source: string, pairs: readonly (readonly [string, string])[]): CodeList {
  return { name, source, codes: pairs.map(([code, meaning]): Code => ({ code, meaning })) };
}

/** The two answers of a question that a form puts plainly. */
export const yesNo = list('yes or no', 'plain words', [
  ['yes', 'it was so'],
  ['no', 'it was not so'],
]);

/** Where a station stands. */
export const setting = list('setting', 'common practice, no source', [
  ['launch', 'at a boat ramp'],
  ['roadside', 'beside a road, away from the water'],
  ['border', 'at the border of the region'],
]);

/** Whether a station was open on a date; closed is not zero. */
export const dayState = list('day state', 'common practice, no source', [
  ['open', 'the station was staffed and inspecting'],
  ['closed', 'the station was closed: no inspections could be made'],
  ['not recorded', 'nobody wrote down whether the station was open'],
]);

/** What sampling has shown of a water, from a date on. */
export const waterStatus = list('water status', 'classification of waters, common practice', [
  ['positive', 'mussels are established or were found more than once'],
  ['suspect', 'one finding, not yet confirmed'],
  ['negative', 'sampled, nothing found'],
  ['not tested', 'never sampled'],
]);

/** Which way a craft was going. */
export const direction = list('direction', 'common practice, no source', [
  ['arriving', 'before launching'],
  ['leaving', 'after taking out'],
  ['roadside', 'on the way between waters'],
]);

/** Whether the craft itself was looked over, or only its papers. */
export const extent = list('extent', 'common practice, no source', [
  ['full', 'the craft itself was looked over'],
  ['paper check', 'only a receipt or seal was looked at; never in a denominator of looks'],
]);

/** Vessel types, 33 CFR 174.19(a)(11). */
export const watercraftType = list('watercraft type', `${vesselTerms}(11)`, [
  ['air boat', 'driven by an air propeller'],
  ['auxiliary sail', 'a sailboat that has an engine'],
  ['cabin motorboat', 'a motorboat with an enclosed cabin'],
  ['houseboat', 'a motorized craft with living quarters, and a low freeboard'],
  ['inflatable boat', 'held up by air chambers'],
  ['open motorboat', 'a motorboat without a cabin'],
  ['paddlecraft', 'canoes, kayaks and boards moved by paddles'],
  ['personal watercraft', 'ridden, not sat in; driven by a water jet'],
  ['pontoon boat', 'a deck carried by tubes'],
  ['rowboat', 'moved by oars'],
  ['sail only', 'a sailboat without an engine'],
  ['other', 'none of these'],
]);

/** Propulsion types, 33 CFR 174.19(a)(13). */
export const propulsion = list('propulsion', `${vesselTerms}(13)`, [
  ['air thrust', 'an air propeller'],
  ['manual', 'paddles, oars or poles'],
  ['propeller', 'a propeller in the water'],
  ['sail', 'wind'],
  ['water jet', 'a jet of water'],
  ['other', 'none of these'],
]);

/** Engine drive types, 33 CFR 174.19(a)(14). */
export const drive = list('drive', `${vesselTerms}(14)`, [
  ['inboard', 'engine inside, shaft through the hull'],
  ['outboard', 'engine hung on the transom'],
  ['pod drive', 'a steerable pod under the hull'],
  ['sterndrive', 'engine inside, drive leg outside the transom'],
  ['other', 'none of these'],
]);

/** Hull materials, 33 CFR 174.19(a)(12). */
export const hullMaterial = list('hull material', `${vesselTerms}(12)`, [
  ['aluminum', 'aluminum'],
  ['fiberglass', 'fiberglass'],
  ['plastic', 'plastic'],
  ['rubber, vinyl or canvas', 'rubber, vinyl or canvas'],
  ['steel', 'steel'],
  ['wood', 'wood'],
  ['other', 'none of these'],
]);

/** Who pulled the craft. */
export const haul = list('haul', 'common practice, no source', [
  ['owner', 'the owner or a friend pulled it'],
  ['commercial', 'a hired hauler pulled it'],
]);

/** Risk by the screening interview; its rules differ between programs and seasons. */
export const risk = list('risk', 'common practice, no source; programs define it each season', [
  ['low', 'the screening interview gave no cause'],
  ['medium', 'some cause'],
  ['high', 'the interview or the craft gave cause for a high-risk inspection'],
]);

/** How an inspection ended. */
export const outcome = list('outcome', 'common practice, no source', [
  ['cleared', 'nothing found, let go'],
  ['cleaned on site', 'plants, mud or water removed by hand and let go'],
  ['washed as a precaution', 'sent to a wash though no mussels were found'],
  ['intercepted', 'mussels were found on the craft, trailer or equipment, or in its water'],
  ['held to dry', 'kept out of the water for a drying time'],
  ['refused', 'the inspection was refused'],
  ['turned away', 'sent off without launching'],
]);

/** Sides of a craft, looking forward. */
export const side = list('side', 'common practice, no source', [
  ['port', 'left, looking forward'],
  ['starboard', 'right, looking forward'],
  ['centre', 'on the centre line'],
  ['none', 'the part has no sides'],
]);

/** Four states of a part, never one blank: not checked is not clean. */
export const checkState = list('check state', 'four values, never one blank', [
  ['absent', 'the craft does not carry the part'],
  ['not checked', 'carried, but not looked at'],
  ['clean', 'looked at, nothing found'],
  ['fouled', 'looked at, something found'],
]);

/** What was found on a fouled part. */
export const finding = list('finding', 'common practice, no source', [
  ['mussels', 'zebra or quagga mussels, any stage'],
  ['suspected grit', 'a sandpaper feel that may be settlers'],
  ['vegetation', 'plants'],
  ['mud', 'mud or slime'],
  ['standing water', 'undrained water'],
  ['other', 'anything else'],
]);

/** The stage of life of mussels found. */
export const stage = list('stage', 'common practice, no source', [
  ['attached', 'attached adults or juveniles'],
  ['settler', 'newly settled, felt more than seen'],
  ['veliger water', 'water that may carry larvae'],
]);

/** How many mussels were found. */
export const abundance = list('abundance', 'common practice, no source', [
  ['trace', 'one to five'],
  ['some', 'six to fifty'],
  ['many', 'more than fifty'],
  ['encrusted', 'overgrown'],
]);

/** Whether mussels found were judged alive. */
export const viability = list('viability', 'common practice, no source', [
  ['alive', 'judged alive'],
  ['dead', 'judged dead'],
  ['undetermined', 'not judged; the field cannot judge reliably'],
]);

/** How a finding was made. */
export const foundBy = list('found by', 'common practice, no source', [
  ['sight', 'seen with the bare eye'],
  ['feel', 'felt by hand'],
  ['mirror', 'seen in a mirror'],
  ['light', 'seen by a lamp'],
  ['magnifier', 'seen through a magnifier'],
  ['camera', 'seen by a camera or borescope'],
]);

/** Why a wash was ordered. */
export const washReason = list('wash reason', 'common practice, no source', [
  ['mussels', 'mussels were found'],
  ['standing water', 'undrained water from a risk water'],
  ['plants', 'plants or mud'],
  ['ballast', 'ballast that cannot be drained'],
  ['leaving a positive water', 'ordered for every craft leaving'],
  ['owner request', 'the owner asked'],
]);

/** How a craft was washed. */
export const washMethod = list('wash method', 'common practice, no source', [
  ['hot spray', 'hot water by nozzle'],
  ['flush', 'hot water through an engine or tank'],
  ['spray and flush', 'both'],
  ['dip tank', 'the craft floated in a hot tank'],
  ['hand removal', 'scraped and picked'],
]);

/** How a wash ended; a craft still held has none. */
export const washEnding = list('wash ending', 'common practice, no source', [
  ['released', 'let go after the wash'],
  ['left unwashed', 'the craft went away before it was washed'],
]);

/** What became of the wash water. */
export const effluent = list('effluent', 'common practice, no source', [
  ['contained', 'kept on a pad or mat and taken away'],
  ['reclaimed', 'filtered and used again'],
  ['evaporated', 'left to dry on the ground where that is allowed'],
  ['other', 'anything else'],
]);

/** What a look after the wash showed. */
export const recheckResult = list('recheck result', 'common practice, no source', [
  ['passed', 'nothing found after the wash'],
  ['failed', 'something was still there'],
  ['not done', 'nobody looked again'],
]);

/** Kinds of wash unit. */
export const unitKind = list('wash unit kind', 'common practice, no source', [
  ['portable', 'on a trailer or skid'],
  ['fixed', 'built in'],
]);

/** What money was spent on. */
export const spendingCategory = list('spending category', 'common practice, no source', [
  ['personnel', 'wages and benefits'],
  ['travel', 'vehicles, fuel and lodging'],
  ['equipment', 'things that last'],
  ['supplies', 'things that are used up'],
  ['contracts', 'work bought'],
  ['training', 'courses and materials'],
  ['indirect', 'overhead'],
]);
