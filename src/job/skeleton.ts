// What does a new job file look like before anybody has measured? A commented text to fill in.

/** A whole job file for `number`: it reads without a problem, and every line is to be gone through. */
export const skeleton = (number: string): string => `# One guard, one file. Change every line; the packet is made from nothing else.
# Lengths: write 12 ft 6 1/2 in, 5'-6 1/2", 66-1/2 in, 1676 mm or 1.68 m. Forces: 300 lbf, 1.3 kN or 1300 N.
# Stand on the deck and look out: sides and posts run from left to right.

job:
  number: ${number}               # letters, digits and single hyphens; it names the output folder
  title: write what is built
  place: write the address
  client: write who it is for
  firm: write who builds it
  prepared by: write your name
  # checked by: another pair of eyes
  status: preliminary             # preliminary, for permit, for construction, as built
  surveyed: 2026-01-01            # the day of the measuring, as year-month-day
  issued: 2026-01-01
  # example: true                 # marks every sheet of an invented job
  # revisions:
  #   - { mark: "0", date: 2026-01-01, by: AB, change: first issue }

units: inch                       # what the sheets print first: inch or mm
# paper: letter                   # letter or a4
# audience: crew                  # crew, homeowner, permit or record: whose words the web page uses

code:
  edition: IRC 2021               # IRC 2018, IRC 2021, IRC 2024, IBC 2021, IBC 2024, NCC 2022 or other
  authority: write who inspects
  occupancy: one- or two-family dwelling    # or: dwelling unit in a larger building, other
  exposure: inland                # inland, coast, pool or road salt
  drop: 38 in                     # walking surface to the ground below
  # pool barrier: false
  # guard height: 36 in           # overrides the edition's own
  # opening: 4 in                 # diameter of the sphere that must not pass
  # stairs: { guard height: 34 in, opening: 4-3/8 in, triangle: 6 in }   # overrides the edition's own on stairs

guard:
  start: { kind: post, access: drill }   # access behind it: drill, hand or none
  end: { kind: post, access: drill }
  # a wall instead of a free end: { kind: wall, gap: 3-1/2 in, access: hand }
  # a pier, in which the cables are anchored: { kind: pier, of: brick, along: 16 in, across: 16 in, height: 44 in,
  #   anchor: { kind: adhesive, hole: 7/16 in, depth: 3-1/2 in, stand-out: 1-1/4 in, flange: 3/4 in, rated: 900 lbf, rated by: its report } }
  # bearing: 90 deg               # compass direction of the first side
  sides:
    - length: 12 ft               # outer face to outer face, along the line of the bores
      # turn: right 90 deg        # needed on every side but the last; right is an outside corner
      # corner: two posts         # or one post: of wood, cables go through it in one bore; or one post, ends: on its two faces (fittings: face);
      #                           # or one post, bores set off: they end behind it, those of the two sides at two heights
      # interrupted: { what: gate, width: 36 in, end: { kind: post }, start: { kind: post } }   # or column, house corner, open
      # stations: [3 in, 5 ft 9 in, 11 ft 9 in]   # middles of the posts, where they are given
      # a side that slopes, its length level: rake: { kind: stair, goes: down, riser: 7 in, tread: 10-1/2 in, nosing: 3/4 in, open risers: false }
      # or pitch: 34 deg; or rise: 4 ft 8 in, run: 7 ft; or these two with risers: 8, treads: 8; or { kind: ramp, goes: up, rise: 8 in }

posts:
  size: 4x4                       # or, first size along the side: size: 50 mm x 50 mm, with wall: 3 mm for a tube
  material: wood                  # wood, steel, stainless or aluminium
  treated: true                   # wood must say
  existing: false                 # true: the posts stand already, give their stations on each side
  below datum: 10 in              # length of a new post below the walking surface, for the cut list
  # largest spacing: 6 ft         # common practice
  # corner clearance: 1/2 in      # between the two posts of a corner, beyond where they would touch
  # corner setback: 2-1/4 in      # or: from a corner to the near face of each of its two posts
  # pair gap: 3-1/2 in            # between two posts where one run ends and the next begins
  # split: two posts              # or: offset bores
  # species: Douglas Fir-Larch    # as stamped on the wood; where nothing is stated, Hem-Fir No.2 is taken
  # grade: No.1                   # Select Structural, No.1 or No.2; the same two keys go into the rails
  # incised: true                 # cut by knives for its preservative
  # built: solid                  # laminated: wood glued of layers; sleeved: a hollow cover round each post
  # sleeve: { size: 5 in x 5 in, wall: 3/16 in, material: vinyl }   # outside of the cover; with built: sleeved. Size above: the wood inside it
  # mount: deck                   # fascia: bolted to the face of the framing below the datum; needs base: { kind: measured, ... }
  # hardware: [{ what: rail bracket, from: 30 in, to: 33 in, posts: [P1, P3] }]   # no bore comes here; on every post if no posts are named
  # as found: [{ post: P3, access: hand, behind: a planter }]   # posts that are not like the others: also size, leans
  # hardware clearance: 1/4 in    # from hardware to the edge of a bore or washer
  # base: { kind: measured, pull: 50 lbf, height: 36 in, movement: 1/4 in }   # or { kind: fixed }
  # base capacity: { pull: 500 lbf, height: 36 in }   # by the report of its fastening

spacers:
  size: 2x2
  material: wood
  treated: true
  # longest free length: 3 ft     # common practice
  # species: Douglas Fir-Larch    # and grade, incised: as for the posts
  # grade: No.1
  # incised: true
  # fixing capacity: 100 lbf      # what the fixing of either end holds square to the guard, by its own report

frame:
  datum: top of the decking       # the surface from which every height is measured
  top rail: { size: 2x6, lay: flat, material: wood, treated: true }
  bottom rail: { size: 2x4, lay: edge, material: wood, treated: true }   # may be left out
  gap below: 2 in                 # from the datum to the underside of the bottom rail
  # rail joint: pinned            # pinned: fastened to the posts; rigid: welded
  # handrail: false               # true: the top rail is held as a handrail too
  clear opening: 29 in            # what the cables fill: between the two rails, or deck and rail
  # on rakes: { gap below: 1 in, clear opening: 28 in, below datum: 20 in }   # plumb above the nosings, where raked sides differ

cable:
  construction: 1x19              # 1x19, 7x7 or 7x19
  diameter: 1/8 in
  grade: 316                      # 304 or 316
  # from the certificate of the strand, where there is one:
  # breaking force: 1780 lbf
  # mass: 35 lb/1000 ft
  # axial stiffness: { low: 780 kN, nominal: 840 kN, high: 900 kN }
  # working share: 30 %           # largest tension as a share of the breaking force
  # bedding: 0.05 %               # stretch that stays as new strand beds in

fittings:
  hold end: grip                  # grip or stud; the other end is a stud and nut
  # ends: on the face             # eyes hold on the faces of posts; through bores without it
  # face: { kind: lag screw, diameter: 5/16 in, depth: 2-1/4 in, thread length: 2 in, tip: 3/16 in, hole: 3/16 in, stand-out: 1-1/4 in, flange: 3/4 in }
  # (in metal posts: face: { kind: rivet nut, thread: M6x1, hole: 9 mm, stand-out: 30 mm, flange: 16 mm, rated: 2.4 kN, rated by: its maker's data sheet }, or kind: tapped hole)
  # measure what you bought; the defaults are common practice for 1/8 in cable:
  # stud: { thread: 1/4-28, bore: 5/16 in, thread length: 2 in, first turns: 3, washer: 5/8 in, reserve: 1/4 in }
  # grip: { bore: 1/4 in, counterbore: 3/8 in, body length: 1-1/4 in, bore without back: 3/8 in, washer: 5/8 in }
  # pass bore: 1/4 in
  # bushing bore: 1/4 in
  # bushing angle: 3 deg
  # bushing: { length: 3/8 in }   # of it in the bore; also rated: 300 lbf, rated by: its maker, where a cable bends
  # in wood, bushings in a stainless tube right through: bushing bore: 5/8 in, the tube's outside; bushing: { length: 3/8 in, tube wall: 1/16 in }
  # bevel edge: 1/16 in           # thin edge of a bevelled washer, at an end on a slope
  # spares: 5 %

supply:
  kind: ready                     # or, from a spool: { kind: spool, spool length: 500 ft, allowance: 6 in, price: 210.00 }
  # lengths: [5 ft, 10 ft, 15 ft]
  # prices: [9.50, 14.00, 18.50]  # one for each length

# stock:
#   lengths: [8 ft, 10 ft, 12 ft, 16 ft]
#   post lengths: [8 ft, 10 ft, 12 ft]
#   kerf: 1/8 in
#   end trim: 1/2 in

# limits:                         # common practice, each can be overridden
#   largest cable spacing: 3 in
#   widest wall gap: 4 in
#   narrowest wall gap: 3 in
#   most bends: 2
#   longest run with bends: 40 ft
#   longest straight run: 70 ft
#   largest turn on one post: 90 deg
#   largest turn bored straight: 60 deg   # a post on the bisector up to here; above, bored on the mitre
#   small turn: 15 deg            # counts among the corners of a run by its share of a right angle
#   tape step: 1/16 in
#   least edge distance: 1/2 in
#   wood between bores: 1/2 in    # that cross in a corner post with bores set off
#   largest movement: 0.8 %       # of a post under the cables, as a share of the guard's height
#   largest deflection: 4 %       # of post or rail under the code's loads, as a share of its length

# site:                           # between which the tension must do
#   reference: 68 F               # the design tension holds at this temperature
#   coldest: 14 F
#   warmest: 95 F
#   moisture at fitting: 19 %     # of the posts, by a moisture meter
#   moisture in service: 12 %
#   wet: true                     # no roof over it
#   floor: wood                   # what the feet of the posts stand on: wood, concrete, steel, stainless or aluminium; as the posts, where left out
#   next visit: 3                 # months after the fitting

# calibration:                    # what was measured on this strand and this frame replaces the tables
#   turns: { cable: R1-05, turns: 6, from: 100 lbf, to: 250 lbf }   # the first cable, all others slack
#   # or by ear: { cable: R1-05, turns: 6, from pitch: 30 Hz, to pitch: 47 Hz, span: 34-1/2 in }
#   weighed: { length: 10 ft, weight: 0.35 lb }

tightening:
  criterion:                      # what the tension has to achieve; agree on it before anybody drills
    kind: sphere                  # or { kind: table, source: NCC 2022 }
    diameter: 4 in                # or { kind: sag, weight: 10 lbf, largest sag: 3/8 in, agreed with: ... }
    force: 12 lbf                 # or { kind: stated, tension: 250 lbf, stated by: ... }
    agreed with: write who agreed
  # order: from the middle outward  # left out, the plan searches it; or: from the outside in, from the bottom up, from the top down
  # passes: [50 %, 100 %]         # left out, the plan chooses them and the reading of each step
  # most passes: 3
  # allow for: heat and settling  # or: heat (cold, in a frame of aluminium: the day that slackens most), nothing
  # band: 10 %
  # friction: 0.3
  # wobble: 0.0015 per m
  # seating: 1/16 in
  # reading step: 5 lbf
  # sag weight: 10 lbf

# printer:                        # full-size templates for one printer that does not keep the size; print them at 100 % first
#   name: office
#   across: 149.2 mm              # what the ruler of 150 mm across the page measures on its print
#   up: 149.6 mm

# notes:
#   - deliver the posts first
`;
