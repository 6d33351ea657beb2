// The one table of fields of every record: member key in the file, unit, range in shown units,
// words, in the order in which they are written. One source per station; nothing else writes a
// field down.
#pragma once

#include "core/project/project.h"

namespace tackbench {

class FieldVisitor;

void visit_fields(FieldVisitor& visitor, Project& project);

void visit_fields(FieldVisitor& visitor, Thread& thread);
void visit_fields(FieldVisitor& visitor, FileReference& file);

void visit_fields(FieldVisitor& visitor, CabShake& shake);
void visit_fields(FieldVisitor& visitor, CabStation& cab);

void visit_fields(FieldVisitor& visitor, ShaftSection& section);
void visit_fields(FieldVisitor& visitor, ColumnBearing& bearing);
void visit_fields(FieldVisitor& visitor, ColumnStation& column);

void visit_fields(FieldVisitor& visitor, ShaftJoint& joint);
void visit_fields(FieldVisitor& visitor, Shaft& shaft);
void visit_fields(FieldVisitor& visitor, ShaftSupport& support);
void visit_fields(FieldVisitor& visitor, ShaftLineStation& line);

void visit_fields(FieldVisitor& visitor, RatioRow& row);
void visit_fields(FieldVisitor& visitor, PitmanArm& arm);
void visit_fields(FieldVisitor& visitor, Relay& relay);
void visit_fields(FieldVisitor& visitor, SteeringBoxStation& box);

void visit_fields(FieldVisitor& visitor, LinkEnd& end);
void visit_fields(FieldVisitor& visitor, LinkTube& tube);
void visit_fields(FieldVisitor& visitor, LinkForces& forces);
void visit_fields(FieldVisitor& visitor, DragLinkStation& link);

void visit_fields(FieldVisitor& visitor, LockStop& stop);
void visit_fields(FieldVisitor& visitor, KnuckleSide& knuckle);
void visit_fields(FieldVisitor& visitor, Tyre& tyre);
void visit_fields(FieldVisitor& visitor, LeafSpring& leaf);
void visit_fields(FieldVisitor& visitor, RadiusArms& arms);
void visit_fields(FieldVisitor& visitor, Suspension& suspension);
void visit_fields(FieldVisitor& visitor, Road& road);
void visit_fields(FieldVisitor& visitor, FrontAxleStation& axle);

void visit_fields(FieldVisitor& visitor, ReturnSpring& spring);
void visit_fields(FieldVisitor& visitor, BellCrank& crank);
void visit_fields(FieldVisitor& visitor, PedalRod& rod);
void visit_fields(FieldVisitor& visitor, EngineLever& lever);
void visit_fields(FieldVisitor& visitor, PedalCable& cable);
void visit_fields(FieldVisitor& visitor, Pedal& pedal);
void visit_fields(FieldVisitor& visitor, PedalsStation& pedals);

void visit_fields(FieldVisitor& visitor, Boots& boots);
void visit_fields(FieldVisitor& visitor, DrawnPerson& person);
void visit_fields(FieldVisitor& visitor, DriverStation& driver);

void visit_fields(FieldVisitor& visitor, PlateHole& hole);
void visit_fields(FieldVisitor& visitor, Shape& shape);
void visit_fields(FieldVisitor& visitor, AnchoredPoint& point);
void visit_fields(FieldVisitor& visitor, StretchPair& pair);
void visit_fields(FieldVisitor& visitor, Rails& rails);
void visit_fields(FieldVisitor& visitor, ShapesStation& shapes);

void visit_fields(FieldVisitor& visitor, DatumPoint& datum);
void visit_fields(FieldVisitor& visitor, TapeReading& reading);
void visit_fields(FieldVisitor& visitor, PlumbReading& reading);
void visit_fields(FieldVisitor& visitor, AngleReading& reading);
void visit_fields(FieldVisitor& visitor, AsBuilt& as_built);
void visit_fields(FieldVisitor& visitor, MeasurementsStation& measurements);

void visit_fields(FieldVisitor& visitor, Backdrop& backdrop);
void visit_fields(FieldVisitor& visitor, SheetNote& note);
void visit_fields(FieldVisitor& visitor, StartOfProject& start);
void visit_fields(FieldVisitor& visitor, SheetSettings& sheet);

void visit_fields(FieldVisitor& visitor, LimitChoice& choice);
void visit_fields(FieldVisitor& visitor, LimitsStation& limits);

}  // namespace tackbench
