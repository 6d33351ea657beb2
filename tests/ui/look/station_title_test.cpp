// Names of stations for the screen are those of the core, until they are translated.
#include "ui/look/station_title.h"

#include <gtest/gtest.h>

namespace tackbench::ui {
namespace {

TEST(StationTitle, IsTheStationsWord) {
  for (const Station station : kStations)
    EXPECT_EQ(station_title(station).toStdString(), station_word(station));
}

}  // namespace
}  // namespace tackbench::ui
